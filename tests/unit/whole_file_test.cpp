#include "files/atomic_file.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cerrno>
#include <csignal>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "catch.h"
#include "text/errors.h"

using namespace cahier;

namespace {

namespace fs = std::filesystem;

// A fresh directory that is gone afterwards.
class Workplace {
 public:
  Workplace() : path_(fs::temp_directory_path() / ("cahier-whole-" + std::to_string(::getpid()))) {
    fs::remove_all(path_);
    fs::create_directory(path_);
  }
  ~Workplace() { fs::remove_all(path_); }
  Workplace(const Workplace&) = delete;
  Workplace& operator=(const Workplace&) = delete;

  std::string file(const std::string& name) const { return (path_ / name).string(); }
  std::size_t count() const {
    return static_cast<std::size_t>(
        std::distance(fs::directory_iterator(path_), fs::directory_iterator()));
  }

 private:
  fs::path path_;
};

std::string content(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

void write_whole(const std::string& path, const std::string& bytes,
                 const FileCalls& calls = FileCalls::system()) {
  PendingFile(path, bytes, Existing::replaced, calls).commit();
}

void write_new(const std::string& path, const std::string& bytes,
               const FileCalls& calls = FileCalls::system()) {
  PendingFile(path, bytes, Existing::refused, calls).commit();
}

// As on a file system where every file has a name.
FileCalls calls_with_names() {
  FileCalls calls = FileCalls::system();
  calls.open_unnamed = [](const char*) {
    errno = EOPNOTSUPP;
    return -1;
  };
  return calls;
}

int failing(int error) {
  errno = error;
  return -1;
}

}  // namespace

TEST_CASE("a file is written whole, byte for byte, and nothing is left beside it") {
  const Workplace place;
  const std::string path = place.file("a.pdf");
  const std::string bytes("\0\xFF\r\n%PDF", 8);
  write_whole(path, bytes);
  CHECK(content(path) == bytes);
  write_whole(path, "shorter");
  CHECK(content(path) == "shorter");
  write_whole(path, "");
  CHECK(content(path).empty());
  CHECK(place.count() == 1);
}

TEST_CASE("after any failing call the old file is untouched and no temporary file is left") {
  const Workplace place;
  const std::string path = place.file("a.pdf");
  write_whole(path, "the old file");
  FileCalls calls = GENERATE(true, false) ? FileCalls::system() : calls_with_names();
  std::string reason;
  SECTION("the disk is full halfway") {
    calls.write = [](int descriptor, const void* data, std::size_t) -> ssize_t {
      return ::lseek(descriptor, 0, SEEK_CUR) > 0 ? failing(ENOSPC) : ::write(descriptor, data, 1);
    };
    reason = "no space left";
  }
  SECTION("nothing can be written and no error is given") {
    calls.write = [](int, const void*, std::size_t) -> ssize_t { return 0; };
    reason = "no space left";
  }
  SECTION("the disk fails when it is forced") {
    calls.sync = [](int) { return failing(EIO); };
    reason = "nput/output error";
  }
  SECTION("closing reports what writing did not") {
    calls.close = [](int descriptor) {
      ::close(descriptor);
      return failing(EDQUOT);
    };
    reason = "quota";
  }
  SECTION("renaming is refused") {
    calls.rename = [](const char*, const char*) { return failing(EACCES); };
    reason = "not permitted";
  }
  CHECK_THROWS_WITH(write_whole(path, "the new file", calls),
                    Catch::Contains(path) && Catch::Contains(reason));
  CHECK_THROWS_AS(write_whole(path, "the new file", calls), FileError);
  CHECK(content(path) == "the old file");
  CHECK(place.count() == 1);
}

TEST_CASE("an interrupted or partial write goes on") {
  const Workplace place;
  const std::string path = place.file("a.pdf");
  FileCalls calls = FileCalls::system();
  int calls_made = 0;
  calls.write = [&](int descriptor, const void* data, std::size_t size) -> ssize_t {
    if (++calls_made % 2 == 1) return failing(EINTR);
    return ::write(descriptor, data, std::min<std::size_t>(size, 3));
  };
  write_whole(path, "in small pieces", calls);
  CHECK(content(path) == "in small pieces");
}

TEST_CASE("a limit on the size of files is reported and leaves nothing behind") {
  const Workplace place;
  const std::string path = place.file("a.pdf");
  write_whole(path, "the old file");
  const auto old_handler = std::signal(SIGXFSZ, SIG_IGN);
  rlimit old_limit{};
  REQUIRE(::getrlimit(RLIMIT_FSIZE, &old_limit) == 0);
  rlimit limit = old_limit;
  limit.rlim_cur = 1000;
  REQUIRE(::setrlimit(RLIMIT_FSIZE, &limit) == 0);
  std::string message;
  try {
    write_whole(path, std::string(5000, 'x'));
  } catch (const FileError& error) {
    message = error.what();
  }
  ::setrlimit(RLIMIT_FSIZE, &old_limit);
  std::signal(SIGXFSZ, old_handler);
  CHECK_THAT(message, Catch::Contains("larger than the system allows"));
  CHECK(content(path) == "the old file");
  CHECK(place.count() == 1);
}

TEST_CASE("a place that cannot hold a file is named with the reason") {
  const Workplace place;
  write_whole(place.file("plain"), "x");
  const auto writing = [](const std::string& path) { write_whole(path, "x"); };
  CHECK_THROWS_WITH(writing(place.file("missing/a.pdf")), Catch::Contains("no such directory"));
  CHECK_THROWS_WITH(writing(place.file("plain/a.pdf")), Catch::Contains("not a directory"));
  CHECK_THROWS_WITH(writing(place.file("")), Catch::Contains("it is a directory"));
  CHECK_THROWS_WITH(writing(place.file(std::string(300, 'n'))), Catch::Contains("too long"));
  CHECK_THROWS_AS(writing(""), FileError);
  CHECK_THROWS_WITH(writing("/dev/full"), Catch::Contains("no space left"));
  CHECK_NOTHROW(writing("/dev/null"));
  CHECK(place.count() == 1);
}

TEST_CASE("a symbolic link stays a link, and permissions stay as they were") {
  const Workplace place;
  const std::string path = place.file("real.pdf");
  write_whole(path, "old");
  REQUIRE(::chmod(path.c_str(), 0640) == 0);
  fs::create_symlink("real.pdf", place.file("link.pdf"));
  write_whole(place.file("link.pdf"), "new");
  CHECK(fs::is_symlink(place.file("link.pdf")));
  CHECK(content(path) == "new");
  CHECK(fs::status(path).permissions() == fs::perms(0640));
}

TEST_CASE("a new file is made where there was none, and nothing else is touched") {
  const Workplace place;
  const std::string path = place.file("log.yaml");
  FileCalls calls = GENERATE(true, false) ? FileCalls::system() : calls_with_names();
  const FileCalls working = calls;
  calls.sync = [](int) { return failing(EIO); };
  CHECK_THROWS_WITH(write_new(path, "new", calls), Catch::Contains("nput/output error"));
  CHECK(place.count() == 0);
  write_new(path, "new", working);
  CHECK(content(path) == "new");
  CHECK_THROWS_WITH(write_new(path, "newer", working),
                    Catch::Contains(path + ": cannot be written: it already exists"));
  CHECK_THROWS_AS(write_new(path, "newer", working), FileError);
  CHECK(content(path) == "new");
  // A link to nothing is there, too.
  const std::string link = place.file("link.yaml");
  REQUIRE(::symlink(place.file("nothing").c_str(), link.c_str()) == 0);
  CHECK_THROWS_AS(write_new(link, "new", working), FileError);
  CHECK(place.count() == 2);
}

TEST_CASE("nothing is to be seen of a file before it is committed") {
  const Workplace place;
  const std::string path = place.file("a.pdf");
  write_whole(path, "old");
  {
    const PendingFile dropped(path, "new", Existing::replaced);
    CHECK(place.count() == 1);
  }
  {
    const PendingFile dropped(path, "new", Existing::replaced, calls_with_names());
    CHECK(place.count() == 2);
  }
  CHECK(place.count() == 1);
  CHECK(content(path) == "old");
}

TEST_CASE("a file that somebody made in the meantime is not replaced") {
  const Workplace place;
  const std::string path = place.file("a.pdf");
  const FileCalls calls = GENERATE(true, false) ? FileCalls::system() : calls_with_names();
  PendingFile late(path, "late", Existing::refused, calls);
  std::ofstream(path) << "somebody's";
  CHECK_THROWS_WITH(late.commit(), Catch::Contains("already exists"));
  CHECK(content(path) == "somebody's");
  CHECK(place.count() == 1);
}

TEST_CASE("what dead processes left is swept, and nothing else") {
  const Workplace place;
  const pid_t dead = ::fork();
  if (dead == 0) ::_exit(0);
  REQUIRE(::waitpid(dead, nullptr, 0) == dead);
  const auto part = [](pid_t process, const std::string& rest) {
    return ".cahier-" + std::to_string(process) + "-" + rest;
  };
  const std::string stale = place.file(part(dead, "0.part"));
  const std::string locked = place.file(part(dead, "1.part"));
  const std::string of_others[] = {place.file(part(::getppid(), "0.part")), locked,
                                   place.file(part(dead, "0.party")),
                                   place.file(part(dead, "x.part")), place.file("my.part")};
  std::ofstream(stale) << "half";
  for (const std::string& path : of_others) std::ofstream(path) << "kept";
  const int lock = ::open(locked.c_str(), O_RDONLY | O_CLOEXEC);
  REQUIRE(::flock(lock, LOCK_EX) == 0);
  write_whole(place.file("a.pdf"), "new");
  ::close(lock);
  CHECK_FALSE(fs::exists(stale));
  for (const std::string& path : of_others) CHECK(fs::exists(path));
}

TEST_CASE("a signal leaves no named temporary file, and ends the program") {
  const Workplace place;
  const int signal = GENERATE(SIGINT, SIGTERM, SIGHUP, SIGQUIT, SIGPIPE);
  const pid_t child = ::fork();
  if (child == 0) {
    // The tests have handlers of their own.
    for (const int ending : {SIGINT, SIGTERM, SIGHUP, SIGQUIT, SIGPIPE})
      std::signal(ending, SIG_DFL);
    const PendingFile pending(place.file("a.pdf"), "new", Existing::refused, calls_with_names());
    ::raise(signal);
    ::_exit(0);
  }
  int status = 0;
  REQUIRE(::waitpid(child, &status, 0) == child);
  CHECK((WIFSIGNALED(status) && WTERMSIG(status) == signal));
  CHECK(place.count() == 0);
}
