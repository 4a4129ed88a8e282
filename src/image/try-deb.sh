#!/bin/sh
# Installs the Debian package in a fresh Debian, runs it there and removes it again; as root, from the project's folder:
#   sh src/image/try-deb.sh [FOLDER]
# FOLDER (default /var/tmp/countstave-debian) gets a minimal system by debootstrap, or has one from an earlier run.
set -e
root=${1:-/var/tmp/countstave-debian}
package=$(ls target/countstave_*.deb)
test -e "$root/etc/debian_version" || debootstrap --variant=minbase bookworm "$root" http://deb.debian.org/debian > /dev/null
mkdir -p "$root/tmp/try"
cp "$package" scores/dense.musicxml "$root/tmp/try/"
mount -t proc proc "$root/proc"
trap 'umount "$root/proc"; rm -rf "$root/tmp/try"' EXIT
chroot "$root" /bin/bash -e -c '
    cd /tmp/try
    dpkg -i countstave_*.deb
    export LC_ALL=C.UTF-8
    countstave count dense.musicxml > counts.txt
    grep -q "counted in" counts.txt
    countstave annotate dense.musicxml -o "dense größer.pdf" --large
    head -c 5 "dense größer.pdf" | grep -q "%PDF-"
    countstave practice dense.musicxml -o folder --tracks 1
    test -s folder/index.html
    if countstave count nothing.musicxml 2> told.txt; then exit 1; fi
    test "$(wc -l < told.txt)" = 1
    . /usr/share/bash-completion/completions/countstave
    COMP_WORDS=(countstave count dense.musicxml --part ""); COMP_CWORD=4; _countstave
    test "${#COMPREPLY[@]}" -gt 0
    zcat /usr/share/man/man1/countstave.1.gz | grep -q "^.TH"
    if ldd /usr/lib/countstave/lib/runtime/lib/server/libjvm.so /usr/bin/countstave | grep "not found"; then exit 1; fi
    dpkg -r countstave
    test ! -e /usr/lib/countstave -a ! -e /usr/bin/countstave
'
echo "the package works in a fresh Debian"
