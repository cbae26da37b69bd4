#include "cli/studio/in_order.h"

#include <signal.h>

#include <algorithm>
#include <condition_variable>
#include <mutex>
#include <thread>
#include <vector>

namespace cahier {
namespace {

// While it lives, signals are blocked in this thread and in those that it begins.
class WithoutSignals {
 public:
  WithoutSignals() {
    sigset_t all;
    ::sigfillset(&all);
    ::pthread_sigmask(SIG_BLOCK, &all, &before_);
  }
  ~WithoutSignals() { ::pthread_sigmask(SIG_SETMASK, &before_, nullptr); }
  WithoutSignals(const WithoutSignals&) = delete;
  WithoutSignals& operator=(const WithoutSignals&) = delete;

 private:
  sigset_t before_;
};

// The numbers still to be done, and which are.
class Numbers {
 public:
  explicit Numbers(std::size_t count) : done_(count) {}

  // The next one to do; past the last where nothing is left.
  std::size_t next() {
    const std::scoped_lock lock(mutex_);
    return std::min(next_++, done_.size());
  }
  void set_done(std::size_t number) {
    {
      const std::scoped_lock lock(mutex_);
      done_[number] = true;
    }
    one_is_done_.notify_one();
  }
  void wait_for(std::size_t number) {
    std::unique_lock lock(mutex_);
    one_is_done_.wait(lock, [&] { return done_[number]; });
  }
  void leave_the_rest() {
    const std::scoped_lock lock(mutex_);
    next_ = done_.size();
  }

 private:
  std::mutex mutex_;
  std::condition_variable one_is_done_;
  std::vector<bool> done_;
  std::size_t next_ = 0;
};

}  // namespace

void in_order(std::size_t count, std::size_t threads, const std::function<WorkOne()>& worker,
              const std::function<void(std::size_t number)>& take) {
  Numbers numbers(count);
  const auto work = [&] {
    const WorkOne one = worker();
    for (std::size_t number = numbers.next(); number < count; number = numbers.next()) {
      one(number);
      numbers.set_done(number);
    }
  };
  std::vector<std::jthread> at_work;  // joined before `numbers` ends
  {
    const WithoutSignals without;
    for (std::size_t at = 0; at < std::min(threads, count); ++at) at_work.emplace_back(work);
  }
  try {
    for (std::size_t number = 0; number < count; ++number) {
      numbers.wait_for(number);
      take(number);
    }
  } catch (...) {
    numbers.leave_the_rest();
    throw;
  }
}

}  // namespace cahier
