/*
 * yaml.c - libyaml's events as a tree of nodes
 *
 * libyaml only cuts the text into words, lists and maps; what a word means is
 * decided elsewhere.  The tree is built with a stack of open lists and maps:
 *
 *	event          stack            tree
 *	map start      [map]            map
 *	word "turns"   [map, key]
 *	list start     [map, list]      map ── turns ── list
 *	word "1"       [map, list]                      list ── "1"
 *
 * Marks count from 0 in libyaml and from 1 in a node: 1 is added in place_of and
 * nowhere else.  What libyaml finds where the file ends is said to be behind
 * the last letter of the file, not on a line below it that nobody sees.
 */
#include "evenhand/world/yaml.h"

#include <assert.h>
#include <string.h>

#include <yaml.h>

#include "evenhand/routine/read.h"
#include "yaml_end.h"

#define BOM "\xef\xbb\xbf"

/* An open list or map. */
struct open {
	struct node *node;
	struct node **tail; /* where the next child is hung */
	const char *key;    /* in a map: read, its value not yet */
	struct place key_place;
};

struct builder {
	const char *path;
	struct arena *arena;
	struct faults *faults;
	struct place end; /* behind the last letter of the file */
	struct node *root;
	int documents;
	int depth;
	struct open open[ROUTINE_DEPTH_MAX];
	const struct yaml_parts *parts; /* NULL: one whole tree */
	struct arena part;		/* the one being read */
};

enum { TREE, LIST, PART }; /* depths of a part and of what it stands in */

/* Whether what comes next is, or is in, a part that is handed on. */
static bool in_part(const struct builder *b)
{
	return b->parts != NULL && b->depth >= PART &&
	    b->open[LIST].node->kind == NODE_LIST &&
	    b->open[TREE].node->kind == NODE_MAP;
}

/* Where the memory of what comes next is taken from. */
static struct arena *arena_of(struct builder *b)
{
	return in_part(b) ? &b->part : b->arena;
}

static struct place place_of(const struct builder *b, const yaml_mark_t *m)
{
	struct place p = { (int)m->line + 1, (int)m->column + 1 };

	return p.line > b->end.line ? b->end : p;
}

static bool fault_message(
    struct builder *b, struct message message, const yaml_mark_t *m)
{
	struct place p = place_of(b, m);

	return faults_add(b->faults, message, b->path, p.line, p.column);
}

static bool fault_mark(
    struct builder *b, enum message_id id, const yaml_mark_t *m)
{
	return fault_message(b, message_of(id), m);
}

static bool no_memory(struct builder *b)
{
	return faults_add(
	    b->faults, message_of(M_ROUTINE_NO_MEMORY), b->path, 0, 0);
}

static bool too_deep(struct builder *b, const yaml_mark_t *m)
{
	return fault_message(b,
	    message_with(b->parts != NULL ? M_RECORD_DEEP : M_ROUTINE_DEEP,
		WHOLE(ROUTINE_DEPTH_MAX)),
	    m);
}

/* Whether a file in parts takes no more memory than it may. */
static bool in_bounds(struct builder *b, const yaml_mark_t *m)
{
	return b->parts == NULL || arena_of(b)->taken <= b->parts->bytes_max ||
	    fault_mark(b, M_RECORD_MUCH, m);
}

/* Hands a part on that is whole, and forgets it. */
static bool part_done(struct builder *b)
{
	struct open *list = &b->open[LIST];
	bool good;

	if (!in_part(b) || b->depth > PART)
		return true;
	good = b->parts->take(
	    b->parts->context, b->root, list->node, list->node->first);
	list->node->first = NULL;
	list->tail = &list->node->first;
	arena_done(&b->part);
	return good;
}

/* A new node at its place in the tree. */
static struct node *hang(
    struct builder *b, enum node_kind kind, const yaml_mark_t *m)
{
	struct node *n = arena_take(arena_of(b), sizeof(*n));
	struct place p = place_of(b, m);

	if (n == NULL) {
		no_memory(b);
		return NULL;
	}
	n->kind = kind;
	n->line = p.line;
	n->column = p.column;
	if (b->depth == 0) {
		b->root = n;
		return n;
	}
	struct open *o = &b->open[b->depth - 1];

	n->key = o->key;
	n->key_line = o->key_place.line;
	n->key_column = o->key_place.column;
	o->key = NULL;
	*o->tail = n;
	o->tail = &n->next;
	return n;
}

/* Whether the next thing in the open map is a key. */
static bool wants_key(const struct builder *b)
{
	const struct open *o = b->depth > 0 ? &b->open[b->depth - 1] : NULL;

	return o != NULL && o->node->kind == NODE_MAP && o->key == NULL;
}

static bool plain_style(const yaml_event_t *e)
{
	return e->data.scalar.style == YAML_PLAIN_SCALAR_STYLE;
}

static bool add_word(struct builder *b, const yaml_event_t *e)
{
	const char *value = (const char *)e->data.scalar.value;
	size_t length = e->data.scalar.length;
	bool key = wants_key(b);
	struct node *n;
	char *word;

	if (e->data.scalar.anchor != NULL || e->data.scalar.tag != NULL)
		return fault_mark(b, M_ROUTINE_SIGN, &e->start_mark);
	if (memchr(value, '\0', length) != NULL)
		return fault_mark(b, M_ROUTINE_CONTROL, &e->start_mark);
	if (key && length == 0)
		return fault_mark(b, M_ROUTINE_NO_KEY, &e->start_mark);
	if (!in_bounds(b, &e->start_mark))
		return false;
	word = arena_text(arena_of(b), value, length);
	if (word == NULL)
		return no_memory(b);
	if (key) {
		struct open *o = &b->open[b->depth - 1];

		o->key = word;
		o->key_place = place_of(b, &e->start_mark);
		return true;
	}
	n = hang(b, NODE_WORD, &e->start_mark);
	if (n == NULL)
		return false;
	n->word = word;
	n->quoted = !plain_style(e);
	return part_done(b);
}

static bool begin(struct builder *b, enum node_kind kind, bool decorated,
    const yaml_mark_t *m)
{
	struct node *n;

	if (decorated)
		return fault_mark(b, M_ROUTINE_SIGN, m);
	if (wants_key(b))
		return fault_mark(b, M_ROUTINE_NO_KEY, m);
	if (b->depth == ROUTINE_DEPTH_MAX)
		return too_deep(b, m);
	if (!in_bounds(b, m))
		return false;
	n = hang(b, kind, m);
	if (n == NULL)
		return false;
	b->open[b->depth++] = (struct open) { .node = n, .tail = &n->first };
	return true;
}

/* False when reading must end. */
static bool take_event(struct builder *b, const yaml_event_t *e)
{
	switch (e->type) {
	case YAML_DOCUMENT_START_EVENT:
		if (b->documents++ > 0)
			return fault_mark(
			    b, M_ROUTINE_YAML_DOCUMENTS, &e->start_mark);
		return true;
	case YAML_ALIAS_EVENT:
		return fault_mark(b, M_ROUTINE_SIGN, &e->start_mark);
	case YAML_SCALAR_EVENT:
		return add_word(b, e);
	case YAML_SEQUENCE_START_EVENT:
		return begin(b, NODE_LIST,
		    e->data.sequence_start.anchor != NULL ||
			e->data.sequence_start.tag != NULL,
		    &e->start_mark);
	case YAML_MAPPING_START_EVENT:
		return begin(b, NODE_MAP,
		    e->data.mapping_start.anchor != NULL ||
			e->data.mapping_start.tag != NULL,
		    &e->start_mark);
	case YAML_SEQUENCE_END_EVENT:
	case YAML_MAPPING_END_EVENT:
		assert(b->depth > 0);
		b->depth--;
		return part_done(b);
	default:
		return true;
	}
}

static bool says(const yaml_parser_t *p, const char *words)
{
	return p->problem != NULL && strstr(p->problem, words) != NULL;
}

/* libyaml's own complaint, as one of our sentences. */
static bool add_problem(struct builder *b, const yaml_parser_t *p)
{
	const yaml_mark_t *m = &p->problem_mark;

	if (p->error == YAML_MEMORY_ERROR)
		return no_memory(b);
	if (p->error == YAML_READER_ERROR)
		return faults_add(
		    b->faults, message_of(M_ROUTINE_NOT_UTF8), b->path, 0, 0);
	if (says(p, "escape"))
		return fault_mark(b, M_ROUTINE_YAML_ESCAPE, m);
	if (says(p, "mapping values are not allowed"))
		return fault_mark(b, M_ROUTINE_TOO_FAR_IN, m);
	if (says(p, "expected '-' indicator") &&
	    m->column == p->context_mark.column)
		return fault_mark(b, M_ROUTINE_NO_DASH, m);
	if (says(p, "did not find expected key") ||
	    says(p, "expected '-' indicator") || says(p, "<document start>"))
		return fault_mark(b, M_ROUTINE_YAML_STEP, m);
	return fault_mark(b, M_ROUTINE_YAML_BROKEN, m);
}

static bool read_events(struct builder *b, yaml_parser_t *p)
{
	bool end = false, good = true;

	while (good && !end) {
		yaml_event_t e;

		if (!yaml_parser_parse(p, &e))
			return add_problem(b, p);
		end = e.type == YAML_STREAM_END_EVENT;
		good = take_event(b, &e);
		yaml_event_delete(&e);
	}
	return good;
}

struct node *yaml_parse(const char *path, const char *bytes, size_t length,
    struct arena *arena, struct faults *faults)
{
	return yaml_parse_parts(path, bytes, length, NULL, arena, faults);
}

struct node *yaml_parse_parts(const char *path, const char *bytes,
    size_t length, const struct yaml_parts *parts, struct arena *arena,
    struct faults *faults)
{
	struct builder b = {
		.path = path, .arena = arena, .faults = faults, .parts = parts
	};
	yaml_parser_t parser;
	bool good;

	if (!yaml_parser_initialize(&parser)) {
		no_memory(&b);
		return NULL;
	}
	yaml_parser_set_encoding(&parser, YAML_UTF8_ENCODING);
	/* libyaml would count a byte order mark as a column. */
	if (length >= strlen(BOM) && memcmp(bytes, BOM, strlen(BOM)) == 0) {
		bytes += strlen(BOM);
		length -= strlen(BOM);
	}
	b.end = yaml_end(bytes, length);
	yaml_parser_set_input_string(
	    &parser, (const unsigned char *)bytes, length);
	good = read_events(&b, &parser);
	yaml_parser_delete(&parser);
	arena_done(&b.part);
	if (!good)
		return NULL;
	/* A file without a word is a map without keys. */
	if (b.root == NULL)
		hang(&b, NODE_MAP, &(yaml_mark_t) { 0 });
	return b.root;
}
