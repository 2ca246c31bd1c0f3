#!/bin/sh
# embed.sh FILE... - the files as a C table of names and bytes, to stdout
set -eu
echo '#include <stddef.h>'
echo 'struct builtin_file { const char *name; const unsigned char *text; size_t length; };'
echo 'extern const struct builtin_file builtin_files[];'
echo 'extern const int builtin_files_count;'
n=0
for file do
	printf 'static const unsigned char text_%d[] = {\n' "$n"
	od -An -v -tu1 "$file" | sed 's/  */ /g; s/^ //; s/ /, /g; s/$/,/'
	echo '0 };'
	n=$((n + 1))
done
echo 'const struct builtin_file builtin_files[] = {'
n=0
for file do
	name=${file##*/}
	printf '{ "%s", text_%d, sizeof text_%d - 1 },\n' "${name%.yaml}" "$n" "$n"
	n=$((n + 1))
done
echo '{ NULL, NULL, 0 } };'
printf 'const int builtin_files_count = %d;\n' "$n"
