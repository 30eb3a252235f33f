#pragma once

#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cstdio>
#include <exception>
#include <functional>
#include <stdexcept>
#include <string>

namespace prismwright {

/// Runs an act in a process of its own that shares nothing but the disk. The act answers its exit code.
class OtherProcess {
 public:
  /// `act` is given a pipe that the test reads.
  explicit OtherProcess(const std::function<int(int pipe)>& act) {
    std::array<int, 2> ends{};
    if (::pipe(ends.data()) != 0) throw std::runtime_error("no pipe");
    child_ = ::fork();
    if (child_ == 0) {
      ::close(ends[0]);
      int code = 99;
      try {
        code = act(ends[1]);
      } catch (const std::exception& error) {
        std::fprintf(stderr, "%s\n", error.what());
      }
      ::_exit(code);  // not exit: what the test has open is none of the child's business
    }
    ::close(ends[1]);
    pipe_ = ends[0];
  }
  ~OtherProcess() {
    if (child_ > 0) {
      kill();
      wait();
    }
    ::close(pipe_);
  }
  OtherProcess(const OtherProcess&) = delete;
  OtherProcess& operator=(const OtherProcess&) = delete;

  void kill() const { ::kill(child_, SIGKILL); }
  /// Its exit code, or -1 when it was killed.
  int wait() {
    int status = 0;
    ::waitpid(child_, &status, 0);
    child_ = -1;
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  }
  /// The next number that it wrote; -1 when there are no more.
  int next_number() const {
    int number = -1;
    return ::read(pipe_, &number, sizeof number) == static_cast<ssize_t>(sizeof number) ? number : -1;
  }

 private:
  pid_t child_ = -1;
  int pipe_ = -1;
};

inline void tell(int pipe, int number) {
  if (::write(pipe, &number, sizeof number) != static_cast<ssize_t>(sizeof number))
    throw std::runtime_error("pipe");
}

}  // namespace prismwright
