/*
 * class_files.c - which record files were gathered into a class
 */
#include "class_parts.h"

static sqlite3_stmt *with_file(const struct class_folder *c, const char *sql,
    const struct class_file *file)
{
	sqlite3_stmt *st = NULL;

	if (sqlite3_prepare_v2(c->base.handle, sql, -1, &st, NULL) != SQLITE_OK)
		return NULL;
	sqlite3_bind_text(st, 1, file->name, -1, SQLITE_STATIC);
	sqlite3_bind_int64(st, 2, file->size);
	sqlite3_bind_int64(st, 3, file->time_ns);
	sqlite3_bind_int64(st, 4, (int64_t)file->hash);
	return st;
}

bool class_file_known(
    const struct class_folder *c, const struct class_file *file)
{
	sqlite3_stmt *st = with_file(c,
	    "SELECT 1 FROM files WHERE (name = ?1 AND size = ?2 "
	    "AND time_ns = ?3) OR (size = ?2 AND hash = ?4 AND hash <> 0) "
	    "LIMIT 1",
	    file);
	bool known = st && sqlite3_step(st) == SQLITE_ROW;

	sqlite3_finalize(st);
	return known;
}

void class_file_keep(struct class_folder *c, const struct class_file *file)
{
	sqlite3_stmt *st = with_file(
	    c, "INSERT OR REPLACE INTO files VALUES (?1, ?2, ?3, ?4)", file);

	if (st)
		sqlite3_step(st);
	sqlite3_finalize(st);
}
