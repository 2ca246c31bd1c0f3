#!/bin/sh
# test_rules_page.sh - the page of the rules: each example played as it stands
# there, and each number compared with the source
#
# shellcheck source=tests/whole/lib.sh
. "$(dirname "$0")/lib.sh"
# shellcheck source=tests/whole/page.sh
. "$root/tests/whole/page.sh"

page=$root/docs/rules.md
page_files "$page"
page_consoles "$page"
page_links "$page"
is "as many commands as are shown" "$(cat "$work/consoles")" \
    "$(grep -c '^\$ ' "$page")"
so "there are many" [ "$(cat "$work/consoles")" -ge 20 ]
page_says

# --- each rule has its example, and says its ground -----------------------------
for rule in 1 2 3 4 5 6 7; do
	so "F$rule has a heading" grep -q "^## F$rule, " "$page"
	so "and an example" grep -q "^F$rule \\[[COP]\\] " "$page"
done

# --- the order of a class is that of the program, each place with its ground -------
page_order=$(sed -n 's/^[0-9]*\. \*\*\([a-z]*\)\*\* \[[COP]\] .*/\1/p' "$page" |
    tr '\n' ' ')
is "the order in which a teacher is needed" "$page_order" \
    "$(sed -n '/^enum student_order/,/STUDENT_ORDERS/s/^	STUDENT_\([A-Z]*\),.*/\1/p' \
	"$root/include/evenhand/coach/student.h" | grep -v ORDERS |
	tr 'A-Z\n' 'a-z ')"
spreads=$(sed -n 's/^#define FORECAST_\(PACE\|STAGE\)_SD //p' \
    "$root/src/coach/forecast_parts.h" | tr '\n' ' ')
is "the spreads of the forecast" "$spreads" "0.35 0.40 "
is "nine of ten courses" "$(echo "$spreads" | awk '{
	printf "%.2f", exp(1.2816 * sqrt($1 ^ 2 + $2 ^ 2)) }')" \
    "$(sed -n 's/.*exp(1.2816 x sqrt(0.35^2 + 0.40^2)) is \([0-9.]*\)\..*/\1/p' "$page")"

# --- the table of numbers ---------------------------------------------------------
cat "$root"/include/evenhand/coach/*.h "$root"/src/coach/*.h > "$work/heads"
# The back-ticks are those of the page.
# shellcheck disable=SC2016
sed -n 's/^| `\([A-Z_]*\)` | \([0-9]*\) | .*/\1 = \2/p' "$page" > numbers
so "there are numbers" [ "$(wc -l < numbers)" -ge 25 ]
is "every row is read" "$(wc -l < numbers | tr -d ' ')" \
    "$(grep -c '^| `' "$page")"
while read -r number; do
	so "$number" grep -qE "(^|[{	 ])${number}[, ]" "$work/heads"
done < numbers

# Constants of the rules that the page does not have.
sed -n 's/^	\(\(AWAY\|HABIT\|LOAD_BASE\|LOAD_GROWS\|LOAD_RISING\|GUARD\|HEARD\|EASE_PERCENT\|STUDENT\|NEW_STAGE\|SHARE_LEAST\)_*[A-Z_]*\) = [0-9]*.*/\1/p' \
    "$work/heads" | grep -v '^GUARD_RECAP\|^STUDENT_[A-Z_]*\(RULES\|MAX\|BYTES\)$' | sort -u > constants
sed 's/ = .*//' numbers | sort -u > told
is "constants left out" "$(comm -23 constants told | tr '\n' ' ')" ""

finish
