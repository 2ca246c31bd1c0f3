/*
 * latency.c - measured delays of pairs of a loudspeaker and a microphone
 */
#include "evenhand/world/latency.h"

#include <limits.h>
#include <stdlib.h>
#include <string.h>

#include "evenhand/base/arena.h"
#include "evenhand/base/date.h"
#include "evenhand/base/frames.h"
#include "evenhand/base/text.h"
#include "evenhand/world/file.h"
#include "evenhand/world/latency_find.h"
#include "evenhand/world/yaml.h"

enum {
	FILE_MAX = 65536,
	KEYS = 9,
};

static bool same_pair(
    const struct latency_pair *a, const struct latency_pair *b)
{
	return strcmp(a->card, b->card) == 0 &&
	    strcmp(a->through, b->through) == 0 &&
	    strcmp(a->microphone, b->microphone) == 0 &&
	    strcmp(a->microphone_through, b->microphone_through) == 0 &&
	    a->rate == b->rate && a->microphone_rate == b->microphone_rate;
}

const struct latency *latency_of(
    const struct latencies *l, const struct latency_pair *pair)
{
	for (int i = 0; i < l->count; i++)
		if (same_pair(&l->at[i].pair, pair))
			return &l->at[i];
	return NULL;
}

/* --- Reading ----------------------------------------------------------------- */

/* A word of a map; NULL with *bad where it is not one. */
static const char *word(
    const struct node *map, const char *key, const struct node **bad)
{
	const struct node *n = node_get(map, key);

	if (n && n->kind == NODE_WORD)
		return n->word;
	if (!*bad)
		*bad = n ? n : map;
	return NULL;
}

static void read_name(
    const struct node *map, const char *key, char *out, const struct node **bad)
{
	const char *name = word(map, key, bad);
	struct text t = text_in(out, DEVICE_NAME_MAX);

	if (!name)
		return;
	text_add_clean(&t, name);
	if (!*bad && (t.cut || strcmp(out, name) != 0))
		*bad = node_get(map, key);
}

static int read_whole(const struct node *map, const char *key, int least,
    int most, const struct node **bad)
{
	const char *digits = word(map, key, bad);
	char *end = NULL;
	long value;

	if (!digits)
		return 0;
	value = strtol(digits, &end, 10);
	if ((*digits == '-' || (*digits >= '0' && *digits <= '9')) && !*end &&
	    value >= least && value <= most)
		return (int)value;
	if (!*bad)
		*bad = node_get(map, key);
	return 0;
}

static int read_day(const struct node *map, const struct node **bad)
{
	const char *date = word(map, "day", bad);
	int day = 0;

	if (date && !date_parse(date, &day) && !*bad)
		*bad = node_get(map, "day");
	return day;
}

/* One delay.  What is wrong with it; NULL: nothing. */
static const struct node *read_one(const struct node *n, struct latency *out)
{
	struct latency_pair *p = &out->pair;
	const struct node *bad = NULL;
	int keys = 0;

	if (n->kind != NODE_MAP)
		return n;
	for (const struct node *k = n->first; k; k = k->next)
		keys++;
	read_name(n, "card", p->card, &bad);
	read_name(n, "through", p->through, &bad);
	read_name(n, "microphone", p->microphone, &bad);
	read_name(n, "microphone_through", p->microphone_through, &bad);
	p->rate = read_whole(n, "rate", RATE_MIN, RATE_MAX, &bad);
	p->microphone_rate = read_whole(
	    n, "microphone_rate", RATE_MIN, RATE_MAX, &bad);
	out->us = read_whole(
	    n, "delay_us", LATENCY_LEAST_US, LATENCY_MOST_US, &bad);
	out->spread_us = read_whole(n, "spread_us", 0, LATENCY_SPREAD_US, &bad);
	out->day = read_day(n, &bad);
	return bad || keys == KEYS ? bad : n;
}

/* All of them.  What is wrong; NULL: nothing. */
static const struct node *read_all(struct latencies *l, const struct node *root)
{
	const struct node *list = node_get(root, "delays"), *bad;

	if (root->kind != NODE_MAP)
		return root;
	if (!root->first)
		return NULL;
	if (!list || list->kind != NODE_LIST || root->first->next)
		return root;
	for (const struct node *n = list->first; n; n = n->next) {
		if (l->count == LATENCIES_MAX)
			return n;
		bad = read_one(n, &l->at[l->count++]);
		if (bad)
			return bad;
	}
	return NULL;
}

static void read_bytes(struct latencies *l, const char *bytes, size_t length,
    struct faults *faults)
{
	struct arena arena = { NULL, 0 };
	struct faults found = { 0 };
	const struct node *root = yaml_parse(
			      l->path, bytes, length, &arena, &found),
			  *bad = root ? read_all(l, root) : NULL;
	int line = bad ? bad->line : 0, column = bad ? bad->column : 0;

	if (!root && found.count > 0) {
		line = found.at[0].line;
		column = found.at[0].column;
	}
	if (!root || bad) {
		l->count = 0;
		faults_add(faults, message_of(M_LATENCY_BROKEN), l->path, line,
		    column);
	}
	arena_done(&arena);
}

void latency_read(struct latencies *l, struct faults *faults)
{
	struct fault f;
	char *bytes;
	size_t length;

	memset(l, 0, sizeof *l);
	if (!path_latency(l->path, sizeof l->path, &f)) {
		l->path[0] = '\0';
		return;
	}
	if (file_read(l->path, FILE_MAX, &bytes, &length, &f)) {
		read_bytes(l, bytes, length, faults);
		free(bytes);
	} else if (f.message.id != M_WORLD_FILE_MISSING) {
		faults_add(faults, f.message, l->path, f.line, f.column);
	}
}

/* --- Writing ----------------------------------------------------------------- */

static void add_name(struct text *t, const char *key, const char *name)
{
	text_format(t, "%s: \"", key);
	for (; *name; name++) {
		if (*name == '"' || *name == '\\')
			text_add(t, "\\");
		text_add_bytes(t, name, 1);
	}
	text_add(t, "\"\n    ");
}

static void add_one(struct text *t, const struct latency *l)
{
	const struct latency_pair *p = &l->pair;
	char day[DATE_TEXT_MAX];

	date_text(l->day, day);
	text_add(t, "  - ");
	add_name(t, "card", p->card);
	add_name(t, "through", p->through);
	add_name(t, "microphone", p->microphone);
	add_name(t, "microphone_through", p->microphone_through);
	text_format(t,
	    "rate: %d\n    microphone_rate: %d\n    delay_us: %d\n"
	    "    spread_us: %d\n    day: %s\n",
	    p->rate, p->microphone_rate, l->us, l->spread_us, day);
}

static void put(struct latencies *l, const struct latency *one)
{
	int kept = 0;

	for (int i = 0; i < l->count; i++)
		if (!same_pair(&l->at[i].pair, &one->pair))
			l->at[kept++] = l->at[i];
	if (kept == LATENCIES_MAX)
		memmove(l->at, l->at + 1, (size_t)--kept * sizeof *l->at);
	l->at[kept++] = *one;
	l->count = kept;
}

bool latency_keep(
    struct latencies *l, const struct latency *one, struct fault *f)
{
	char *bytes;
	struct text t;
	bool good;

	put(l, one);
	if (!*l->path)
		return fault_set(f, message_of(M_WORLD_NO_HOME));
	bytes = malloc(FILE_MAX);
	if (!bytes) {
		fault_set(f, message_of(M_WORLD_FILE_NO_MEMORY));
		return fault_at(f, l->path, 0, 0);
	}
	t = text_in(bytes, FILE_MAX);
	text_add(&t, "# Measured by evenhand sound --measure\ndelays:\n");
	for (int i = 0; i < l->count; i++)
		add_one(&t, &l->at[i]);
	good = folder_make_for(l->path, f) &&
	    file_replace(l->path, bytes, t.length, f);
	free(bytes);
	return good;
}
