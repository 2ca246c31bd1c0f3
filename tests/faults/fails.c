/*
 * fails.c - loaded into a program (LD_PRELOAD), lets one call of it fail
 *
 * Calls of one kind are counted, of the program of one name only, and the one
 * asked for fails as it would on a computer that has no more to give.  What is
 * called is passed on to the system directly, so nothing here asks for memory.
 *
 *	FAILS_IN     name of the program: evenhand, evenhand-paper, ...
 *	FAILS_KIND   memory: asked for by the program itself; in evenhand by the
 *	                     C library, too; other libraries have what they want
 *	             disk: whatever changes an ordinary file or a folder
 *	             files: whatever opens a file or a folder (EMFILE)
 *	             more: threads, processes, pipes and what else is limited
 *	FAILS_ONLY   a part of the name of the one library whose memory fails:
 *	             libsqlite3
 *	FAILS_OWN    when it is set, memory of the C library does not fail: what
 *	             curses asks it for it does not look at
 *	FAILS_AT     which one, from 1; 0 lets all pass and counts
 *	FAILS_ON     when it is set, all that come later fail as well
 *	FAILS_WITH   number of the error (errno) that kind disk gives
 *	FAILS_COUNT  a file of eight bytes that the count is kept in
 *	FAILS_CAME   an empty file that gets a byte when that call is made
 */
#ifndef _GNU_SOURCE
#define _GNU_SOURCE
#endif
#include <dirent.h>
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <link.h>
#include <pthread.h>
#include <stdarg.h>
#include <stdatomic.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/socket.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <unistd.h>

/* What glibc calls its own. */
extern void *__libc_malloc(size_t size);
extern void *__libc_calloc(size_t count, size_t size);
extern void *__libc_realloc(void *old, size_t size);
extern void *__libc_memalign(size_t align, size_t size);

enum kind { NONE, MEMORY, DISK, FILES, MORE };

enum { HANGS_SECONDS = 100 };

struct stretch {
	uintptr_t from, to;
};

static enum kind kind;
static unsigned long at;
static const char *came;
static bool later, whole_program;
static int with = ENOSPC;
static _Atomic unsigned long own_count;
static _Atomic unsigned long *count = &own_count;
static struct stretch code[8];
static int stretches;
static int (*real_mkstemp)(char *);
static DIR *(*real_opendir)(const char *);
static pid_t (*real_fork)(void);
static int (*real_shm_open)(const char *, int, mode_t);
static int (*real_thread)(
    pthread_t *, const pthread_attr_t *, void *(*)(void *), void *);

/* --- which call it is ----------------------------------------------------- */

static int look_at(struct dl_phdr_info *info, size_t size, void *context)
{
	const char *name = info->dlpi_name;

	(void)size;
	if (context != NULL ? strstr(name, context) == NULL
			    : *name != '\0' &&
		    (!whole_program || strstr(name, "/libc.so") == NULL))
		return 0;
	for (int i = 0; i < info->dlpi_phnum; i++) {
		const ElfW(Phdr) *p = &info->dlpi_phdr[i];

		if (p->p_type != PT_LOAD || (p->p_flags & PF_X) == 0)
			continue;
		if (stretches == sizeof(code) / sizeof(*code))
			return 1;
		code[stretches].from = info->dlpi_addr + p->p_vaddr;
		code[stretches].to = code[stretches].from + p->p_memsz;
		stretches++;
	}
	return 0;
}

static bool ours(const void *caller)
{
	uintptr_t where = (uintptr_t)caller;

	for (int i = 0; i < stretches; i++)
		if (where >= code[i].from && where < code[i].to)
			return true;
	return false;
}

/* Leaves a sign that the call was come to. */
static void sign(void)
{
	int error = errno;
	int fd = (int)syscall(SYS_openat, AT_FDCWD, came, O_WRONLY | O_CLOEXEC);

	if (fd >= 0) {
		syscall(SYS_write, fd, "!", 1);
		syscall(SYS_close, fd);
	}
	errno = error;
}

/* Whether this call, one of such a kind, is to fail. */
static bool fails(enum kind k)
{
	unsigned long n;

	if (k != kind)
		return false;
	n = atomic_fetch_add(count, 1) + 1;
	if (n == at && came != NULL)
		sign();
	return at > 0 && (n == at || (later && n > at));
}

static void count_in(const char *path)
{
	int fd = (int)syscall(SYS_openat, AT_FDCWD, path, O_RDWR | O_CLOEXEC);
	void *p = MAP_FAILED;

	if (fd >= 0)
		p = mmap(NULL, sizeof(*count), PROT_READ | PROT_WRITE,
		    MAP_SHARED, fd, 0);
	if (p != MAP_FAILED)
		count = p;
	if (fd >= 0)
		syscall(SYS_close, fd);
}

__attribute__((constructor)) static void begin(void)
{
	const char *name = getenv("FAILS_IN"), *word = getenv("FAILS_KIND");
	const char *number = getenv("FAILS_AT"), *path = getenv("FAILS_COUNT");
	const char *error = getenv("FAILS_WITH");

	*(void **)&real_mkstemp = dlsym(RTLD_NEXT, "mkstemp");
	*(void **)&real_opendir = dlsym(RTLD_NEXT, "opendir");
	*(void **)&real_fork = dlsym(RTLD_NEXT, "fork");
	*(void **)&real_shm_open = dlsym(RTLD_NEXT, "shm_open");
	*(void **)&real_thread = dlsym(RTLD_NEXT, "pthread_create");
	/* Nothing hangs, and who waits for others neither. */
	alarm(HANGS_SECONDS);
	if (name == NULL || word == NULL || number == NULL ||
	    strcmp(name, program_invocation_short_name) != 0)
		return;
	whole_program = strcmp(name, "evenhand") == 0 &&
	    getenv("FAILS_OWN") == NULL;
	dl_iterate_phdr(look_at, getenv("FAILS_ONLY"));
	at = strtoul(number, NULL, 10);
	later = getenv("FAILS_ON") != NULL;
	with = error != NULL ? atoi(error) : ENOSPC;
	came = getenv("FAILS_CAME");
	if (path != NULL)
		count_in(path);
	/* From here on it counts. */
	kind = strcmp(word, "memory") == 0 ? MEMORY
	    : strcmp(word, "disk") == 0	   ? DISK
	    : strcmp(word, "files") == 0   ? FILES
	    : strcmp(word, "more") == 0	   ? MORE
					   : NONE;
}

/* --- memory --------------------------------------------------------------- */

#define CALLER __builtin_extract_return_addr(__builtin_return_address(0))

static bool none_left(const void *caller)
{
	if (kind != MEMORY || !ours(caller) || !fails(MEMORY))
		return false;
	errno = ENOMEM;
	return true;
}

void *malloc(size_t size)
{
	return none_left(CALLER) ? NULL : __libc_malloc(size);
}

void *calloc(size_t n, size_t size)
{
	return none_left(CALLER) ? NULL : __libc_calloc(n, size);
}

void *realloc(void *old, size_t size)
{
	return none_left(CALLER) ? NULL : __libc_realloc(old, size);
}

void *aligned_alloc(size_t align, size_t size)
{
	return none_left(CALLER) ? NULL : __libc_memalign(align, size);
}

/* --- disk ----------------------------------------------------------------- */

/* What the program prints is another matter. */
static bool on_disk(int fd)
{
	struct stat s;

	return kind == DISK && (fd > STDERR_FILENO || !whole_program) &&
	    fstat(fd, &s) == 0 && S_ISREG(s.st_mode);
}

static bool disk_fails(int fd)
{
	if (!on_disk(fd) || !fails(DISK))
		return false;
	errno = with;
	return true;
}

static bool path_fails(const char *path)
{
	if (kind != DISK || strncmp(path, "/dev/", 5) == 0 ||
	    strncmp(path, "/proc/", 6) == 0 || !fails(DISK))
		return false;
	errno = with;
	return true;
}

/* No file more may be open. */
static bool no_file(void)
{
	if (!fails(FILES))
		return false;
	errno = EMFILE;
	return true;
}

/* A disk that gets full takes a part of what is written first. */
static size_t taken(size_t size)
{
	return later && with == ENOSPC && at == atomic_load(count) && size > 1
	    ? size / 2
	    : 0;
}

ssize_t write(int fd, const void *bytes, size_t size)
{
	if (disk_fails(fd)) {
		size = taken(size);
		if (size == 0)
			return -1;
	}
	return syscall(SYS_write, fd, bytes, size);
}

ssize_t pwrite(int fd, const void *bytes, size_t size, off_t from)
{
	if (disk_fails(fd)) {
		size = taken(size);
		if (size == 0)
			return -1;
	}
	return syscall(SYS_pwrite64, fd, bytes, size, from);
}

ssize_t pwrite64(int fd, const void *bytes, size_t size, off_t from)
{
	return pwrite(fd, bytes, size, from);
}

/* Nobody cuts the power here, so the disk is not waited for. */
int fsync(int fd)
{
	return disk_fails(fd) ? -1 : 0;
}

int fdatasync(int fd)
{
	return disk_fails(fd) ? -1 : 0;
}

int ftruncate(int fd, off_t size)
{
	return disk_fails(fd) ? -1 : (int)syscall(SYS_ftruncate, fd, size);
}

int ftruncate64(int fd, off_t size)
{
	return ftruncate(fd, size);
}

int rename(const char *from, const char *to)
{
	return path_fails(to) ? -1 : (int)syscall(SYS_rename, from, to);
}

int link(const char *from, const char *to)
{
	return path_fails(to) ? -1 : (int)syscall(SYS_link, from, to);
}

int linkat(int a, const char *from, int b, const char *to, int flags)
{
	return path_fails(to) ? -1
			      : (int)syscall(SYS_linkat, a, from, b, to, flags);
}

/* A full disk lets files go. */
int unlink(const char *path)
{
	return with != ENOSPC && path_fails(path)
	    ? -1
	    : (int)syscall(SYS_unlink, path);
}

int mkstemp(char *name)
{
	return no_file() || path_fails(name) ? -1 : real_mkstemp(name);
}

int mkdir(const char *path, mode_t rights)
{
	return path_fails(path) ? -1 : (int)syscall(SYS_mkdir, path, rights);
}

static int opened(int folder, const char *path, int flags, mode_t rights)
{
	bool changes = (flags & O_ACCMODE) != O_RDONLY || (flags & O_CREAT);

	if (no_file() || (changes && path_fails(path)))
		return -1;
	return (int)syscall(SYS_openat, folder, path, flags, rights);
}

static mode_t rights_of(int flags, va_list more)
{
	return (flags & O_CREAT) || (flags & O_TMPFILE) == O_TMPFILE
	    ? va_arg(more, mode_t)
	    : 0;
}

int open(const char *path, int flags, ...)
{
	va_list more;
	mode_t rights;

	va_start(more, flags);
	rights = rights_of(flags, more);
	va_end(more);
	return opened(AT_FDCWD, path, flags, rights);
}

int open64(const char *path, int flags, ...) __attribute__((alias("open")));

DIR *opendir(const char *path)
{
	return no_file() ? NULL : real_opendir(path);
}

int __open_2(const char *path, int flags);
int __open_2(const char *path, int flags)
{
	return opened(AT_FDCWD, path, flags, 0);
}

/* --- what else a system may have no more of -------------------------------- */

static bool no_more(int error)
{
	if (!fails(MORE))
		return false;
	errno = error;
	return true;
}

pid_t fork(void)
{
	return no_more(EAGAIN) ? -1 : real_fork();
}

int pthread_create(pthread_t *thread, const pthread_attr_t *wish,
    void *(*work)(void *), void *context)
{
	return fails(MORE) ? EAGAIN : real_thread(thread, wish, work, context);
}

int pipe(int ends[2])
{
	return no_more(EMFILE) ? -1 : (int)syscall(SYS_pipe2, ends, 0);
}

int socketpair(int family, int type, int protocol, int ends[2])
{
	return no_more(EMFILE)
	    ? -1
	    : (int)syscall(SYS_socketpair, family, type, protocol, ends);
}

int dup(int from)
{
	return no_more(EMFILE) ? -1 : (int)syscall(SYS_dup, from);
}

int shm_open(const char *name, int flags, mode_t rights)
{
	return no_more(EMFILE) ? -1 : real_shm_open(name, flags, rights);
}
