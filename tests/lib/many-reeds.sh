# Makes many reeds out of the few of a kept copy of an earlier schema: each row again and again under other ids, whatever columns it has.
# Part of tests/migrations.sh.
# shellcheck shell=bash

# In an order that references allow. What happened once for all (accounts, the studio) isn't copied.
many_tables='Students Batches IntakeDrafts CommonThreads Letters LetterVersions Reeds Questions BenchLog FindingSheet'

# What a column of a copied row holds, as an expression of either engine. $1: column; $2: the expression for an id with the copy's number in front.
many_value() {
  local place digits='' sum=''
  case $1 in
    RecordedBy | SavedBy | SentBy | ChosenBy) say "r.\"$1\"" ;; # those who work here stay the same
    Account) say 'NULL' ;;                                      # one account is one student's
    Email | FoldedEmail) say "replace(r.\"$1\", '@', '+' || k.n || '@')" ;;
    Code) # six characters that count, and a seventh by which a slip is found
      for place in 0 1 2 3 4 5; do
        digits+="substr('23456789BCDFGHJKLMNPQRSTVWXYZ', ((5000 + k.n * 4 + r.at) / $((29 ** (5 - place)))) % 29 + 1, 1) || "
        sum+="+ $((7 - place)) * (((5000 + k.n * 4 + r.at) / $((29 ** (5 - place)))) % 29) "
      done
      say "${digits}substr('23456789BCDFGHJKLMNPQRSTVWXYZ', (29 - (${sum#+ }) % 29) % 29 + 1, 1)" ;;
    *) say "$2" ;;
  esac
}

# The statement that copies one table. $1: table; $2: its columns, one a line, with "id" behind those that hold ids; $3: the numbers of
# the copies as a table k(n); $4: how an id is made anew, with ? for the column.
many_statement() {
  local column kind columns='' values='' fresh
  while read -r column kind; do
    fresh="r.\"$column\""
    [ "$kind" != id ] || fresh=${4//\?/r.\"$column\"}
    columns+=", \"$column\""
    values+=", $(many_value "$column" "$fresh")"
  done <<< "$2"
  say "INSERT INTO \"$1\" (${columns#, }) SELECT ${values#, } FROM (SELECT *, CAST(row_number() OVER () - 1 AS integer) AS at FROM \"$1\") AS r, $3 ORDER BY k.n;"
}

# Many out of few in a file of SQLite. $1: the file; $2: how many copies.
many_in_sqlite() {
  local table columns statements
  statements=$(
    say 'PRAGMA journal_mode=WAL; PRAGMA synchronous=NORMAL; PRAGMA cache_size=-200000; BEGIN;'
    say "CREATE TEMP TABLE k (n INTEGER PRIMARY KEY); INSERT INTO k WITH RECURSIVE c(n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM c WHERE n < $2) SELECT n FROM c;"
    for table in $many_tables; do
      columns=$(sqlite3 -separator ' ' "$1" "SELECT name, CASE type WHEN 'TEXT' THEN 'id' ELSE '-' END FROM pragma_table_info('$table')")
      many_statement "$table" "$columns" k "CASE WHEN ? LIKE '________-____-____-____-____________' THEN printf('%08X', k.n) || substr(?, 9) ELSE ? END"
    done
    say 'COMMIT; PRAGMA wal_checkpoint(TRUNCATE);'
  )
  sqlite3 -bail "$1" <<< "$statements" > /dev/null
}

# The same in a database of PostgreSQL. $1: how many copies; the rest: psql and how it reaches the database.
many_in_postgres() {
  local table columns statements copies=$1
  shift
  statements=$(
    say 'BEGIN;'
    for table in $many_tables; do
      columns=$("$@" -AtF ' ' -c "SELECT column_name, CASE data_type WHEN 'uuid' THEN 'id' ELSE '-' END FROM information_schema.columns WHERE table_schema = 'public' AND table_name = '$table' ORDER BY ordinal_position")
      many_statement "$table" "$columns" "generate_series(1, $copies) AS k(n)" "(lpad(to_hex(k.n), 8, '0') || substr(?::text, 9))::uuid"
    done
    say 'COMMIT; ANALYZE; CHECKPOINT;'
  )
  "$@" -q -v ON_ERROR_STOP=1 <<< "$statements"
}
