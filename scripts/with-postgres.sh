#!/bin/sh
# Starts a throw-away PostgreSQL cluster, runs the given command with COVELINE_TEST_DATABASE_URL, and removes it again.
#   scripts/with-postgres.sh npx vitest run packages/store
# Needs the server binaries (Debian: apt-get install postgresql). As root the server runs as user postgres.
set -eu

if [ $# -eq 0 ]; then
  echo "usage: scripts/with-postgres.sh COMMAND [ARGUMENTS]" >&2
  exit 2
fi

bin=$(ls -d /usr/lib/postgresql/*/bin 2>/dev/null | sort -V | tail -n 1)
[ -n "$bin" ] || bin=$(dirname "$(command -v initdb 2>/dev/null || echo /missing/initdb)")
if [ ! -x "$bin/initdb" ]; then
  echo "No PostgreSQL server found: install it (Debian: apt-get install postgresql)." >&2
  exit 1
fi

folder=$(mktemp -d)
as_owner() { "$@"; }
if [ "$(id -u)" -eq 0 ]; then
  chown postgres "$folder"
  as_owner() { runuser -u postgres -- "$@"; }
fi

stop() {
  as_owner "$bin/pg_ctl" -D "$folder/data" -m immediate stop >/dev/null 2>&1 || true
  rm -rf "$folder"
}
trap stop EXIT
trap 'exit 130' INT
trap 'exit 143' TERM

cd "$folder"
as_owner "$bin/initdb" -D "$folder/data" -U postgres --auth=trust --encoding=UTF8 --no-sync >"$folder/initdb.log" 2>&1 ||
  { cat "$folder/initdb.log" >&2; exit 1; }
# Only a socket in the private folder: no port to collide with, nobody else can reach it.
as_owner "$bin/pg_ctl" -D "$folder/data" -l "$folder/data/server.log" -w -t 60 \
  -o "-c listen_addresses='' -c unix_socket_directories='$folder' -c fsync=off" start >/dev/null ||
  { cat "$folder/data/server.log" >&2; exit 1; }
cd "$OLDPWD"

COVELINE_TEST_DATABASE_URL="postgresql://postgres@localhost/postgres?host=$folder" "$@"
