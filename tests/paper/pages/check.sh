#!/usr/bin/env bash
# The HTML papers, read by programs nobody here wrote: bash tests/paper/pages/check.sh FOLDER...
# Their markup and style by the Nu HTML checker, what a browser shows by Chromium and axe-core (look.mjs). Before a page is believed to be
# good, pages spoiled on purpose have to be found bad. The checkers are installed in build/page_checks, as package-lock.json has them.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
tools=$here/../../../build/page_checks
export PAGE_TOOLS=$tools
[ $# -gt 0 ] || { echo "where do the papers lie? bash tests/paper/pages/check.sh FOLDER..." >&2; exit 2; }

if ! cmp -s "$here/package-lock.json" "$tools/installed"; then
    mkdir -p "$tools"
    cp "$here/package.json" "$here/package-lock.json" "$tools"
    npm ci --prefix "$tools" --ignore-scripts --no-audit --no-fund --silent
    cp "$here/package-lock.json" "$tools/installed"
fi

# It takes data: pictures for blocked where a policy allows them (img-src data:; Content Security Policy Level 3, 6.7.2.8, a scheme on
# its own). Only that message is left out; look.mjs sees to it that a browser shows every picture.
blocked='Resource violates Content Security Policy .meta tag.: image .data:image/(png|jpeg);base64,.* blocked by .img-src. directive[.]'

# Errors and warnings, one a line; what it only lets one know is no fault. Ends badly when the checker itself could not run.
markup_faults() {
    local said=$spoiled/said.txt
    java -jar "$tools/node_modules/vnu-jar/build/dist/vnu.jar" --format gnu --exit-zero-always --filterpattern "$blocked" "$@" \
        >"$said" 2>&1 || { cat "$said" >&2; return 1; }
    grep -vE '^"?file:[^ ]*: info: ' "$said" || true
}

spoiled=$(mktemp -d)
trap 'rm -rf "$spoiled"' EXIT
pages=()
for folder in "$@"; do
    for page in "$folder"/*.html; do
        [ -e "$page" ] || { echo "no pages in $folder" >&2; exit 1; }
        pages+=("$page")
    done
done

# spoil NAME SED [PART]: a copy of the first page that has PART and what SED changes.
spoil() {
    local page
    for page in "${pages[@]}"; do
        grep -q -- "${3:-<main>}" "$page" || continue
        sed -E "$2" "$page" >"$spoiled/$1.html"
        if ! cmp -s "$page" "$spoiled/$1.html"; then return; fi
    done
    echo "no page can be spoiled: $1" >&2
    exit 1
}
spoil unclosed '0,/<\/h2>/s//<\/h3>/'
spoil style_of_its_own '0,/margin: 0 auto/s//margin: 0 sideways/'
spoil pale_by_day '0,/--quiet: #535e63/s//--quiet: #a0a8ac/'
spoil pale_by_night '0,/--quiet: #a8b3b8/s//--quiet: #50585c/'
spoil dark_drawing '0,/\.drawing \.tint \{ fill: var\(--tint\)/s//.drawing .tint { fill: #606468/' '>section 1</text>'
spoil no_language '0,/<html lang="[a-z-]*"/s//<html/'
spoil wide_table '0,/\.scroll \{ overflow-x: auto;/s//.scroll { min-width: 700px;/' '<div class="scroll'
spoil running '0,/<main>/s//<main><script>alert(1)<\/script>/;0,/default-src .none.;/s///'
spoil fetching '0,/<main>/s//<main><p><img src="http:\/\/127.0.0.1:9\/x.png" alt="x"><\/p>/'

markup_faults "$spoiled"/*.html >"$spoiled/markup.txt"
node "$here/look.mjs" "$spoiled"/*.html >"$spoiled/looks.txt" || true
found() {
    grep -qE -- "$2" "$spoiled/$1" && return
    echo "a spoiled page was not found: $2" >&2
    cat "$spoiled/$1" >&2
    exit 1
}
found markup.txt 'unclosed\.html.*error'
found markup.txt 'style_of_its_own\.html.*error'
found looks.txt '^pale_by_day\.html light .*color-contrast'
found looks.txt '^pale_by_night\.html dark .*color-contrast'
found looks.txt '^dark_drawing\.html .*contrast of'
found looks.txt '^no_language\.html .*html-has-lang'
found looks.txt '^wide_table\.html .* phone: is [0-9]+ px wide'
found looks.txt '^wide_table\.html .* phone: sticks out'
found looks.txt '^running\.html.*runs a script'
found looks.txt '^fetching\.html .*a picture is not shown'
for one in "pale_by_day.html dark" "pale_by_night.html light"; do
    if grep -q "^$one .*color-contrast" "$spoiled/looks.txt"; then echo "found in the wrong light: $one" >&2 && exit 1; fi
done

markup_faults "${pages[@]}" >"$spoiled/markup.txt"
cat "$spoiled/markup.txt"
node "$here/look.mjs" "${pages[@]}"
[ ! -s "$spoiled/markup.txt" ]
echo "pages: ${#pages[@]}, their markup without an error or a warning"
