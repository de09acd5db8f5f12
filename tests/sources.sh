#!/usr/bin/env bash
# Gathers the sources that the Arm and WebAssembly builds compile in (UNDERSHEET_BUNDLED_SOURCES_DIR):
#   bash tests/sources.sh FOLDER      (default build/sources)
# SQLite, SQLiteCpp, libsodium, zlib, libjpeg-turbo and the QR code generator come as Debian's source packages, with Debian's security fixes, through a
# private apt folder, so the system's own package lists stay as they are. The header-only libraries and the typeface are copied from this
# machine: pointing a cross compiler at the whole include folder would bring the host's C library along.
# A folder that is already complete is left as it is. Needs: bash tests/setup.sh --all
set -euo pipefail

into=$(realpath -m "${1:-$(dirname "$0")/../build/sources}")
if [ -f "$into/complete" ] && [ -d "$into/qrcode" ] && [ -d "$into/jpeg" ]; then exit 0; fi

work=$into.part
rm -rf "$into" "$work"
mkdir -p "$work"/{apt/lists/partial,apt/archives/partial,unpacked,done/include}
trap 'rm -rf "$work"' EXIT

codename=$(. /etc/os-release && echo "${VERSION_CODENAME:-bookworm}")
keyring=/usr/share/keyrings/debian-archive-keyring.gpg

# The mirrors this machine already uses for Debian itself, asked for sources instead of packages.
mirrors() {
    apt-get indextargets --format '$(SITE) $(RELEASE) $(COMPONENT)' 'Created-By: Packages' 2>/dev/null |
        awk -v name="$codename" '$3 == "main" && ($2 == name || index($2, name "-") == 1)' | sort -u
}
default_mirrors() {
    echo "http://deb.debian.org/debian $codename main"
    echo "http://deb.debian.org/debian-security $codename-security main"
}
found=$(mirrors)
while read -r line; do echo "deb-src [signed-by=$keyring] $line"; done \
    <<<"${found:-$(default_mirrors)}" >"$work/apt/sources.list"

private_apt() {
    apt-get -q -o Dir::Etc::sourcelist="$work/apt/sources.list" -o Dir::Etc::sourceparts=- \
        -o Dir::State::lists="$work/apt/lists" -o Dir::Cache="$work/apt" -o APT::Sandbox::User=root "$@"
}
log=$work/log
fetch() {
    private_apt update && cd "$work/unpacked" && private_apt source sqlite3 libsqlitecpp-dev libsodium zlib libjpeg-turbo &&
        private_apt source --tar-only qr-code-generator && tar -xf qr-code-generator_*.orig.tar.*
}
if ! (fetch) >"$log" 2>&1 </dev/null; then
    tail -n 20 "$log" >&2
    echo "sources: apt could not fetch the source packages of sqlite3, sqlitecpp, libsodium, zlib, libjpeg-turbo and qr-code-generator" >&2
    exit 1
fi

cd "$work/unpacked"
if ! (cd sqlite3-*/ && ./configure --disable-readline && make sqlite3.c) >>"$log" 2>&1; then
    tail -n 20 "$log" >&2
    echo "sources: SQLite could not be put together into one file" >&2
    exit 1
fi
mkdir -p "$work"/done/{sqlite,sqlitecpp,libsodium,zlib,jpeg/parts,fonts,qrcode/qrcodegen}
cp sqlite3-*/sqlite3.[ch] "$work/done/sqlite/"
cp -r sqlitecpp-*/{include,src} "$work/done/sqlitecpp/"
cp -r libsodium-*/src/libsodium/. "$work/done/libsodium/"
cp libsodium-*/builds/msvc/version.h "$work/done/libsodium/include/sodium/"
cp zlib-*/{adler32,compress,crc32,deflate,inffast,inflate,inftrees,trees,uncompr,zutil}.c zlib-*/*.h "$work/done/zlib/"
# Without its programs, its assembler and its arithmetic coding; parts are what other files include.
cd libjpeg-turbo-*/
cp j{capimin,capistd,ccoefct,ccolor,cdctmgr,chuff,cicc,cinit,cmainct,cmarker,cmaster,comapi,cparam,cphuff,cprepct,csample,ctrans}.c \
    jd{apimin,apistd,atadst,atadst-tj,atasrc,atasrc-tj,coefct,color,dctmgr,huff,icc,input,mainct,marker,master,merge,phuff,postct,sample,trans}.c \
    j{error,fdctflt,fdctfst,fdctint,idctflt,idctfst,idctint,idctred,quant1,quant2,utils,memmgr,memnobs,simd_none}.c \
    turbojpeg.c transupp.c rd{bmp,ppm}.c wr{bmp,ppm}.c ./*.h "$work/done/jpeg/"
cp jccolext.c jdcol565.c jdcolext.c jdmrg565.c jdmrgext.c jstdhuff.c "$work/done/jpeg/parts/"
cp jconfig.h.in jconfigint.h.in jversion.h.in "$work/done/jpeg/"
cd ..
cp /usr/share/fonts/truetype/crosextra/Carlito-{Regular,Bold}.ttf "$work/done/fonts/"
cp QR-Code-generator-*/cpp/qrcodegen.[ch]pp "$work/done/qrcode/qrcodegen/"
for headers in nlohmann catch2 eigen3/Eigen; do cp -r "/usr/include/$headers" "$work/done/include/"; done
ls -d ./*/ >"$work/done/complete"

mv "$work/done" "$into"
