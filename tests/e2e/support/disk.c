// A disk that forgets at a power cut what was not flushed. Preloaded into the browser, it keeps
// beside the profile (DISK_PROFILE) a second folder (DISK_FLUSHED) of what would be left: a file as
// it was when it was last flushed; names and removals as they were when anything was last flushed,
// as a journaling file system has them. Only files under the profile are looked at.
#define _GNU_SOURCE
#include <dlfcn.h>
#include <fcntl.h>
#include <libgen.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#define REAL(name) ((__typeof__(&name))dlsym(RTLD_NEXT, #name))

static int within(const char *path, char *flushed, size_t room) {
  const char *profile = getenv("DISK_PROFILE"), *to = getenv("DISK_FLUSHED");
  if (!profile || !to || !path) return 0;
  size_t length = strlen(profile);
  if (strncmp(path, profile, length) || path[length] != '/') return 0;
  return snprintf(flushed, room, "%s%s", to, path + length) < (int)room;
}

static FILE *names(const char *how) {
  char path[PATH_MAX];
  snprintf(path, sizeof path, "%s.names", getenv("DISK_FLUSHED"));
  return fopen(path, how);
}

// One process at a time; the lock goes with the file.
static int locked(void) {
  char path[PATH_MAX];
  snprintf(path, sizeof path, "%s.lock", getenv("DISK_FLUSHED"));
  int lock = open(path, O_RDWR | O_CREAT | O_CLOEXEC, 0600);
  if (lock >= 0) flock(lock, LOCK_EX);
  return lock;
}

static void folders(char *path) {
  for (char *slash = strchr(path + 1, '/'); slash; slash = strchr(slash + 1, '/')) {
    *slash = 0;
    mkdir(path, 0700);
    *slash = '/';
  }
}

static void copy(int from, char *to) {
  char part[PATH_MAX + 8], bytes[65536];
  folders(to);
  snprintf(part, sizeof part, "%s~", to);
  int out = open(part, O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0600);
  if (out < 0) return;
  ssize_t read;
  for (off_t at = 0; (read = pread(from, bytes, sizeof bytes, at)) > 0; at += read) {
    if (write(out, bytes, read) != read) abort();
  }
  close(out);
  REAL(rename)(part, to);
}

// What was renamed and removed since the last flush is on the disk with this one.
static void settle(void) {
  FILE *said = names("r");
  if (!said) return;
  char from[PATH_MAX], to[PATH_MAX];
  while (fgets(from, sizeof from, said) && fgets(to, sizeof to, said)) {
    from[strcspn(from, "\n")] = to[strcspn(to, "\n")] = 0;
    if (*to) folders(to), REAL(rename)(from, to);
    else if (REAL(unlink)(from)) REAL(rmdir)(from);
  }
  fclose(said);
  fclose(names("w"));
}

static void flushed(int file) {
  char link[64], path[PATH_MAX] = {0}, to[PATH_MAX], again[64];
  snprintf(link, sizeof link, "/proc/self/fd/%d", file);
  if (readlink(link, path, sizeof path - 1) < 0 || !within(path, to, sizeof to)) return;
  int lock = locked();
  settle();
  struct stat is;
  snprintf(again, sizeof again, "/proc/self/fd/%d", file);
  int from = open(again, O_RDONLY | O_CLOEXEC);
  if (from >= 0 && !fstat(from, &is) && S_ISREG(is.st_mode) && !access(path, F_OK)) copy(from, to);
  if (from >= 0) close(from);
  close(lock);
}

static void renamed(const char *from, const char *to) {
  char was[PATH_MAX], is[PATH_MAX] = {0};
  if (!within(from, was, sizeof was) || (to && !within(to, is, sizeof is))) return;
  int lock = locked();
  FILE *said = names("a");
  if (said) fprintf(said, "%s\n%s\n", was, is), fclose(said);
  close(lock);
}

int fsync(int file) {
  flushed(file);
  return 0;
}

int fdatasync(int file) {
  flushed(file);
  return 0;
}

int rename(const char *from, const char *to) {
  int failed = REAL(rename)(from, to);
  if (!failed) renamed(from, to);
  return failed;
}

int unlink(const char *path) {
  int failed = REAL(unlink)(path);
  if (!failed) renamed(path, NULL);
  return failed;
}

int rmdir(const char *path) {
  int failed = REAL(rmdir)(path);
  if (!failed) renamed(path, NULL);
  return failed;
}
