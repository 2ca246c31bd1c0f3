/*
 * record.c - small questions to a record
 */
#include "evenhand/record/record.h"

#include <string.h>

bool record_id_good(const char *id)
{
	return strlen(id) == RECORD_ID_MAX - 1 &&
	    id[strspn(id, "0123456789abcdef")] == '\0';
}

bool record_has_computer(const struct record *r, const char *id)
{
	for (int i = 0; i < r->computers; i++)
		if (strcmp(r->computer[i].id, id) == 0)
			return true;
	return false;
}

const struct record_routine *record_routine_of(
    const struct record *r, uint64_t fingerprint)
{
	for (const struct record_routine *m = r->routine; m; m = m->next)
		if (m->fingerprint == fingerprint)
			return m;
	return NULL;
}

void record_done(struct record *r)
{
	arena_done(&r->arena);
	*r = (struct record) { 0 };
}
