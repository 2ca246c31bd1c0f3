/*
 * gettext.c - the language and the signs that the person before it has chosen
 *
 * The whole catalogue is looked through once, sentence by sentence; those that
 * do not fit their arguments are left in English.
 */
#include "evenhand/world/gettext.h"

#include <langinfo.h>
#include <locale.h>
#include <string.h>

#include "evenhand/base/tongue.h"
#include "evenhand/world/beside.h"
#include "evenhand/world/paths.h"

enum { DATE_SIGNS = 5 }; /* "d.m.y" */

static struct tongue tongue;

#if __has_include(<libintl.h>)
#include <libintl.h>

enum { KEY_BYTES = 2048 };

static const char domain[] = "evenhand";

/* What the catalogue has for a sentence; NULL: nothing that can be said. */
static const char *translated(enum message_id id)
{
	char key[KEY_BYTES];
	struct text t = text_in(key, sizeof(key));
	const char *found;

	text_format(&t, "%s\004%s", message_name(id), message_english(id));
	found = dcgettext(domain, key, LC_MESSAGES);
	return found != key && tongue_fits(message_signature(id), found) ? found
									 : NULL;
}

static void read_catalogue(void)
{
	char folder[PATH_BYTES_MAX];

	if (!setlocale(LC_MESSAGES, "") ||
	    !beside_locale(folder, sizeof(folder)) ||
	    !bindtextdomain(domain, folder) ||
	    !bind_textdomain_codeset(domain, "UTF-8") ||
	    /* Its head has the key "". */
	    !*dcgettext(domain, "", LC_MESSAGES))
		return;
	for (int i = M_NONE + 1; i < M_COUNT; i++)
		tongue.sentence[i] = translated((enum message_id)i);
}
#else
static void read_catalogue(void)
{
}
#endif

static void read_point(locale_t there)
{
	const char *point = nl_langinfo_l(RADIXCHAR, there);
	struct text t = text_in(tongue.point, sizeof(tongue.point));

	text_add_clean(&t, point);
}

/* The part of a date behind a '%', as a tongue writes it; 0 for all others. */
static char part_of(char letter)
{
	switch (letter) {
	case 'd':
	case 'e':
		return 'd';
	case 'm':
		return 'm';
	case 'Y':
	case 'y':
		return 'y';
	default:
		return '\0';
	}
}

/*
 * Three parts of digits with a sign between them, "%d.%m.%Y", are as wide as
 * 2026-03-02 and taken; all else is not.  Nor is what C has, "%m/%d/%y", which
 * says nothing of a place.
 */
static void read_date(locale_t there)
{
	const char *f = nl_langinfo_l(D_FMT, there);
	char date[TONGUE_DATE_MAX] = "";
	int length = 0;

	if (strcmp(f, nl_langinfo(D_FMT)) == 0)
		return;
	while (length < DATE_SIGNS && *f == '%') {
		f += f[1] == '-' ? 2 : 1;
		date[length] = part_of(*f);
		if (!date[length] ||
		    strchr(date, date[length]) != &date[length])
			return;
		length++;
		f++;
		if (*f && length < DATE_SIGNS)
			date[length++] = *f++;
	}
	if (length == DATE_SIGNS && !*f && strchr("./-", date[1]) &&
	    strchr("./-", date[3]))
		memcpy(tongue.date, date, sizeof(date));
}

/* Whether letters are shown as we write them. */
static bool shows_utf8(void)
{
	locale_t there = newlocale(LC_CTYPE_MASK, "", (locale_t)0);
	bool shows = there != (locale_t)0 &&
	    strcmp(nl_langinfo_l(CODESET, there), "UTF-8") == 0;

	if (there != (locale_t)0)
		freelocale(there);
	return shows;
}

void gettext_begin(void)
{
	locale_t there = newlocale(
	    LC_TIME_MASK | LC_NUMERIC_MASK, "", (locale_t)0);

	if (there != (locale_t)0) {
		read_point(there);
		read_date(there);
		freelocale(there);
	}
	if (shows_utf8())
		read_catalogue();
	tongue_set(&tongue);
}
