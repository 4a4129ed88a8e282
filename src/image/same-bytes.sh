#!/bin/sh
# Builds the committed state twice, in two folders, and compares the jars: sh src/image/same-bytes.sh
set -e
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
for copy in first second; do
    git clone -q . "$work/$copy"
    (cd "$work/$copy" && mvn -q -B "$@" package -Dmaven.test.skip=true)
done
cmp "$work/first/target/countstave.jar" "$work/second/target/countstave.jar"
echo "the same bytes: $(sha256sum < "$work/first/target/countstave.jar" | cut -c1-64)"
