/*
 * A disk that fails on demand, loaded in front of the C library (LD_PRELOAD).
 *
 * Counts the operations that change files below one folder, and makes one of them, or all from
 * one on, fail with a chosen error. Everything else passes through untouched.
 *
 *   FOREBOND_FAULT_DIR    folder whose files count (absolute, no trailing slash)
 *   FOREBOND_FAULT_AT     the operation to fail, from 1; 0 or absent: none, only count
 *   FOREBOND_FAULT_ERRNO  EIO (default) or ENOSPC
 *   FOREBOND_FAULT_FOR    how many operations fail from there on; default 1, -1 for all
 *   FOREBOND_FAULT_COUNT  file that holds the number of operations so far, in decimal
 *
 * A program may arm it anew: opening FOREBOND_FAULT_DIR with `.arm-N` at its end fails with ENOENT,
 * sets the operation to fail to N and counts from 0 again.
 *
 * A failing write of more than one byte leaves its first half on the disk: a torn write.
 */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <stdarg.h>
#include <stdatomic.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/uio.h>
#include <unistd.h>

static atomic_long operations;
static atomic_long fail_at;
static long fail_for = 1;
static int fail_with = EIO, count_fd = -1;
static char folder[PATH_MAX];
static size_t folder_length;

static ssize_t (*real_write)(int, const void *, size_t);
static ssize_t (*real_pwrite)(int, const void *, size_t, off_t);
static ssize_t (*real_pwrite64)(int, const void *, size_t, off64_t);
static ssize_t (*real_writev)(int, const struct iovec *, int);
static ssize_t (*real_pwritev)(int, const struct iovec *, int, off_t);
static ssize_t (*real_pwritev64)(int, const struct iovec *, int, off64_t);
static int (*real_fsync)(int);
static int (*real_fdatasync)(int);
static int (*real_ftruncate)(int, off_t);
static int (*real_ftruncate64)(int, off64_t);
static int (*real_unlink)(const char *);
static int (*real_rename)(const char *, const char *);
static int (*real_mkdir)(const char *, mode_t);
static int (*real_open)(const char *, int, ...);
static int (*real_open64)(const char *, int, ...);

#define LOAD(name) real_##name = dlsym(RTLD_NEXT, #name)

__attribute__((constructor)) static void prepare(void) {
  LOAD(write); LOAD(pwrite); LOAD(pwrite64); LOAD(writev); LOAD(pwritev); LOAD(pwritev64);
  LOAD(fsync); LOAD(fdatasync); LOAD(ftruncate); LOAD(ftruncate64);
  LOAD(unlink); LOAD(rename); LOAD(mkdir); LOAD(open); LOAD(open64);
  const char *dir = getenv("FOREBOND_FAULT_DIR");
  const char *at = getenv("FOREBOND_FAULT_AT");
  const char *how = getenv("FOREBOND_FAULT_ERRNO");
  const char *during = getenv("FOREBOND_FAULT_FOR");
  const char *count = getenv("FOREBOND_FAULT_COUNT");
  if (dir != NULL) snprintf(folder, sizeof folder, "%s", dir);
  folder_length = strlen(folder);
  if (at != NULL) fail_at = atol(at);
  if (how != NULL && strcmp(how, "ENOSPC") == 0) fail_with = ENOSPC;
  if (during != NULL) fail_for = atol(during);
  if (count != NULL) count_fd = real_open(count, O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0600);
}

static int is_below(const char *path) {
  if (folder_length == 0 || path == NULL || strncmp(path, folder, folder_length) != 0) return 0;
  return path[folder_length] == '/' || path[folder_length] == '\0';
}

static int is_below_fd(int fd) {
  char link[64], path[PATH_MAX];
  snprintf(link, sizeof link, "/proc/self/fd/%d", fd);
  ssize_t length = readlink(link, path, sizeof path - 1);
  if (length <= 0) return 0;
  path[length] = '\0';
  return is_below(path);
}

/* Is this the wish to be armed anew? Then it is granted. */
static int arms(const char *path) {
  if (folder_length == 0 || path == NULL || strncmp(path, folder, folder_length) != 0) return 0;
  if (strncmp(path + folder_length, ".arm-", 5) != 0) return 0;
  fail_at = atol(path + folder_length + 5);
  operations = 0;
  errno = ENOENT;
  return 1;
}

/* Counts one operation; true if it is to fail. */
static int fails(void) {
  long number = atomic_fetch_add(&operations, 1) + 1;
  if (count_fd >= 0) {
    char text[24];
    int length = snprintf(text, sizeof text, "%ld", number);
    if (real_pwrite(count_fd, text, (size_t)length, 0) != length) abort();
  }
  if (fail_at <= 0 || number < fail_at) return 0;
  if (fail_for >= 0 && number >= fail_at + fail_for) return 0;
  errno = fail_with;
  return 1;
}

#define FAIL_IF(where) do { if ((where) && fails()) return -1; } while (0)

ssize_t write(int fd, const void *bytes, size_t count) {
  if (is_below_fd(fd) && fails()) {
    if (count > 1 && real_write(fd, bytes, count / 2) < 0) abort();
    errno = fail_with;
    return -1;
  }
  return real_write(fd, bytes, count);
}

ssize_t pwrite(int fd, const void *bytes, size_t count, off_t at) {
  if (is_below_fd(fd) && fails()) {
    if (count > 1 && real_pwrite(fd, bytes, count / 2, at) < 0) abort();
    errno = fail_with;
    return -1;
  }
  return real_pwrite(fd, bytes, count, at);
}

ssize_t pwrite64(int fd, const void *bytes, size_t count, off64_t at) {
  if (is_below_fd(fd) && fails()) {
    if (count > 1 && real_pwrite64(fd, bytes, count / 2, at) < 0) abort();
    errno = fail_with;
    return -1;
  }
  return real_pwrite64(fd, bytes, count, at);
}

ssize_t writev(int fd, const struct iovec *parts, int count) {
  FAIL_IF(is_below_fd(fd));
  return real_writev(fd, parts, count);
}

ssize_t pwritev(int fd, const struct iovec *parts, int count, off_t at) {
  FAIL_IF(is_below_fd(fd));
  return real_pwritev(fd, parts, count, at);
}

ssize_t pwritev64(int fd, const struct iovec *parts, int count, off64_t at) {
  FAIL_IF(is_below_fd(fd));
  return real_pwritev64(fd, parts, count, at);
}

int fsync(int fd) { FAIL_IF(is_below_fd(fd)); return real_fsync(fd); }
int fdatasync(int fd) { FAIL_IF(is_below_fd(fd)); return real_fdatasync(fd); }
int ftruncate(int fd, off_t size) { FAIL_IF(is_below_fd(fd)); return real_ftruncate(fd, size); }
int ftruncate64(int fd, off64_t size) { FAIL_IF(is_below_fd(fd)); return real_ftruncate64(fd, size); }
int unlink(const char *path) { FAIL_IF(is_below(path)); return real_unlink(path); }
int mkdir(const char *path, mode_t mode) { FAIL_IF(is_below(path)); return real_mkdir(path, mode); }

int rename(const char *from, const char *to) {
  FAIL_IF(is_below(from) || is_below(to));
  return real_rename(from, to);
}

/* Opening only counts where it may make a file or open one for writing. */
static int opens_to_write(int flags) { return (flags & (O_CREAT | O_WRONLY | O_RDWR)) != 0; }

int open(const char *path, int flags, ...) {
  va_list rest;
  va_start(rest, flags);
  mode_t mode = (mode_t)va_arg(rest, int);
  va_end(rest);
  if (arms(path)) return -1;
  FAIL_IF(opens_to_write(flags) && is_below(path));
  return real_open(path, flags, mode);
}

int open64(const char *path, int flags, ...) {
  va_list rest;
  va_start(rest, flags);
  mode_t mode = (mode_t)va_arg(rest, int);
  va_end(rest);
  if (arms(path)) return -1;
  FAIL_IF(opens_to_write(flags) && is_below(path));
  return real_open64(path, flags, mode);
}
