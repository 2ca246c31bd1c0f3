/*
 * sound_shared.c - the memory that evenhand and its sound child share
 *
 * It has a name for a moment only, since a program that is started by another
 * takes over descriptors, and nothing that is mapped.
 */
#include "sound_shared.h"

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

enum sound_phase sound_phase(const struct sound_shared *s, int32_t number)
{
	int32_t state = atomic_load_explicit(
	    &s->state.value, memory_order_acquire);

	if (state / PHASES != number)
		return SOUND_BEGINS;
	return (enum sound_phase)(state % PHASES);
}

void sound_phase_set(struct sound_shared *s, enum sound_phase phase)
{
	atomic_store_explicit(&s->state.value,
	    s->order.number * PHASES + (int32_t)phase, memory_order_release);
}

struct engine *sound_engine(struct sound_shared *s)
{
	return (struct engine *)(void *)((char *)s + rounded(sizeof *s));
}

static size_t size_of_all(void)
{
	return rounded(sizeof(struct sound_shared)) + rounded(engine_size());
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
	if (ftruncate(*memory, (off_t)size_of_all()) == 0)
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

	memset((char *)s + kept, 0, size_of_all() - kept);
}
