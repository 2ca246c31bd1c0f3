/*
 * template.c - every sentence evenhand can say, for whoever begins another
 * language; to stdout, in the form that gettext's tools read
 */
#include <stdio.h>

#include "evenhand/base/message.h"

static void put(const char *key, const char *s)
{
	printf("%s \"", key);
	for (; *s; s++)
		printf(*s == '"' || *s == '\\' ? "\\%c" : "%c", *s);
	printf("\"\n");
}

int main(void)
{
	printf("msgid \"\"\nmsgstr \"\"\n"
	       "\"Content-Type: text/plain; charset=UTF-8\\n\"\n"
	       "\"Content-Transfer-Encoding: 8bit\\n\"\n");
	for (int i = M_NONE + 1; i < M_COUNT; i++) {
		enum message_id id = (enum message_id)i;

		printf("\n");
		put("msgctxt", message_name(id));
		put("msgid", message_english(id));
		put("msgstr", "");
	}
	return ferror(stdout) || fclose(stdout) != 0;
}
