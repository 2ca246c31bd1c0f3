/*
 * sound_shared.c - the memory that evenhand and its sound child share
 *
 * It has a name for a moment only, since a program that is started by another
 * takes over descriptors, and nothing that is mapped.
 */
#include "sound_shared.h"

#include <errno.h>
#include <fcntl.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <unistd.h>

#include "evenhand/base/text.h"
#include "random.h"

enum {
	LINE = 64,
	PHASES = 8,
	NAME_BYTES = 30, /* some systems take no more */
};

static size_t rounded(size_t size)
{
	return (size + LINE - 1) / LINE * LINE;
}

static enum sound_phase phase_in(
    const struct sound_state *state, int32_t number)
{
	int32_t value = atomic_load_explicit(
	    &state->value, memory_order_acquire);

	if (value / PHASES != number)
		return SOUND_BEGINS;
	return (enum sound_phase)(value % PHASES);
}

static void phase_out(
    struct sound_state *state, int32_t number, enum sound_phase phase)
{
	atomic_store_explicit(&state->value, number * PHASES + (int32_t)phase,
	    memory_order_release);
}

enum sound_phase sound_phase(const struct sound_shared *s, int32_t number)
{
	return phase_in(&s->state, number);
}

void sound_phase_set(struct sound_shared *s, enum sound_phase phase)
{
	phase_out(&s->state, s->order.number, phase);
}

enum sound_phase hearing_phase(const struct sound_hearing *h, int32_t number)
{
	return phase_in(&h->state, number);
}

void hearing_phase_set(struct sound_hearing *h, enum sound_phase phase)
{
	phase_out(&h->state, h->order.number, phase);
}

/* Where the engine and the part of the one that hears lie. */
static size_t engine_at(void)
{
	return rounded(sizeof(struct sound_shared));
}

static size_t hearing_at(void)
{
	return engine_at() + rounded(engine_size());
}

struct engine *sound_engine(struct sound_shared *s)
{
	return (struct engine *)(void *)((char *)s + engine_at());
}

struct sound_hearing *sound_hearing(struct sound_shared *s)
{
	return (struct sound_hearing *)(void *)((char *)s + hearing_at());
}

static size_t size_of_all(void)
{
	return hearing_at() + rounded(sizeof(struct sound_hearing));
}

void sound_shared_layout(char *words, size_t size)
{
	struct text t = text_in(words, size);

	text_format(
	    &t, "%s/%d/%zu", EVENHAND_VERSION, SOUND_LAYOUT, size_of_all());
}

struct sound_shared *sound_shared_join(int memory)
{
	struct stat found;
	void *s;

	if (fstat(memory, &found) != 0 || found.st_size < (off_t)size_of_all())
		return NULL;
	s = mmap(
	    NULL, size_of_all(), PROT_READ | PROT_WRITE, MAP_SHARED, memory, 0);
	return s != MAP_FAILED ? s : NULL;
}

/*
 * Takes all of the room now: memory that is only promised ends whoever touches
 * it (SIGBUS) when the file system it lies in is full by then.
 */
static bool take(int memory, size_t size)
{
	int error = ENOSYS;

	if (ftruncate(memory, (off_t)size) != 0)
		return false;
#if defined(_POSIX_ADVISORY_INFO) && _POSIX_ADVISORY_INFO > 0
	do
		error = posix_fallocate(memory, 0, (off_t)size);
	while (error == EINTR);
#endif
	/* Some file systems and systems cannot, and have no such bounds. */
	return error == 0 || error == EINVAL || error == EOPNOTSUPP ||
	    error == ENOSYS;
}

struct sound_shared *sound_shared_make(int *memory)
{
	struct sound_shared *s = NULL;
	char name[NAME_BYTES], id[33];
	struct text t = text_in(name, sizeof name);

	random_id(id);
	text_format(&t, "/evenhand-%.16s", id);
	*memory = shm_open(name, O_RDWR | O_CREAT | O_EXCL, 0600);
	if (*memory < 0)
		return NULL;
	shm_unlink(name);
	if (take(*memory, size_of_all()))
		s = sound_shared_join(*memory);
	if (!s)
		close(*memory);
	return s;
}

void sound_shared_leave(struct sound_shared *s)
{
	munmap(s, size_of_all());
}

void sound_shared_clear(struct sound_shared *s)
{
	size_t kept = offsetof(struct sound_shared, order);

	memset((char *)s + kept, 0, hearing_at() - kept);
}

void sound_hearing_clear(struct sound_hearing *h)
{
	size_t kept = offsetof(struct sound_hearing, order);

	/* Samples that no block tells of need not be cleared. */
	memset((char *)h + kept, 0,
	    offsetof(struct sound_hearing, inlet) +
		offsetof(struct inlet, block) - kept);
}
