#ifndef CORE_CLI_CREW_H
#define CORE_CLI_CREW_H

#include <sys/types.h>

#include <cstddef>
#include <cstdint>
#include <deque>
#include <functional>
#include <map>
#include <memory>
#include <string>
#include <vector>

#include "core/cli/minder.h"
#include "core/cli/task.h"

namespace tamis::cli {

/// The supervisor: gives tasks to worker processes and takes what comes of them in the order they were given in, so
/// that the result is the same for any number of workers. With one worker the work is done in this process, but for tasks that
/// are to be kept apart.
///
/// A worker that dies leaves the task it was at to be done again by another, told how many have died at it; at the
/// second death the task becomes one that cannot be done, and says so. What waited behind it goes to others. One that is in
/// a plugin when it dies, or is ended because the plugin is overdue, leaves its task to be done again without that plugin;
/// a plugin that has ended three is left out of all tasks that follow.
///
/// Bounded: no more than a few dozen tasks a worker, and some megabytes of them, are under way at a time.
class Crew {
 public:
  /// Takes an outcome; false when no more is wanted.
  using Take = std::function<bool(Outcome& outcome)>;

  /// Whether a task may end the process that does it, or never end.
  using Apart = std::function<bool(const Task& task)>;

  Crew(unsigned workers, Work work, Take take, Apart apart = nullptr);
  Crew(const Crew&) = delete;
  Crew& operator=(const Crew&) = delete;
  ~Crew();

  /// False when no more is wanted.
  bool give(Task task);
  /// Something to be told between the tasks, in its turn.
  bool tell(Outcome outcome);
  /// Goes on with what is under way until the descriptor has something to read, or its end.
  void wait_for(int descriptor);
  /// Waits for all that was given. False when no more was wanted before the end.
  bool finish();

 private:
  struct Place {
    Task task;
    Outcome outcome;
    bool done = false;
  };
  struct Worker {
    pid_t process = -1;
    int socket = -1;
    std::unique_ptr<Minder> minder;
    bool overdue = false;  // ended by us
    std::string to_send;
    std::string received;
    std::deque<std::uint64_t> at_work;  // first: the one it is doing
  };

  Place& place(std::uint64_t number) { return places_[number - first_]; }
  [[nodiscard]] bool full() const;
  [[nodiscard]] std::size_t weight(const Place& place) const;
  Worker* hire();
  Worker* free_worker();
  void deal();
  bool pump(bool wait, int also);
  void send(Worker& worker) const;
  void receive(Worker& worker);
  void bring_in(Worker& worker);
  void bury(Worker& worker);
  void blame(Worker& worker, const std::string& how);
  void end_overdue();
  void done(std::uint64_t number, Outcome outcome);
  void hand_over();
  void dismiss(bool kill);

  unsigned most_;
  Work work_;
  Take take_;
  Apart apart_;
  std::map<std::string, std::vector<std::string>> ended_;  // by plugin: why each worker died
  std::vector<std::unique_ptr<Worker>> workers_;
  std::deque<Place> places_;         // given and not yet handed over, in order
  std::uint64_t first_ = 0;          // number of the first of them
  std::deque<std::uint64_t> waiting_;  // not yet with a worker
  std::size_t held_bytes_ = 0;
  bool stopped_ = false;
};

/// What --jobs says: a number from 1, or "auto" or 0 for one a core. 0 when it is neither.
unsigned jobs_of(const std::string& text);

}  // namespace tamis::cli

#endif
