#include "core/cli/crew.h"

#include <fcntl.h>
#include <poll.h>
#include <sys/socket.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cassert>
#include <cerrno>
#include <charconv>
#include <csignal>
#include <thread>
#include <utility>

#include "core/cli/frames.h"
#include "core/cli/offspring.h"
#include "core/cli/output.h"
#include "core/cli/report.h"
#include "core/cli/worker.h"

namespace tamis::cli {
namespace {

// Enough for a worker never to wait for the next, few enough that none waits behind a long one.
constexpr std::size_t tasks_a_worker = 4;
// How far the others may run ahead of a long one.
constexpr std::size_t places_a_worker = 64;
constexpr std::size_t most_held_bytes = std::size_t{16} << 20U;
// A task that two workers died at is given up.
constexpr std::uint64_t most_deaths = 2;
// A plugin that ended as many workers is heard no more.
constexpr std::size_t most_ended = 3;
// How often the workers' plugins are looked after.
constexpr int milliseconds_a_look = 100;

bool readable(int descriptor) {
  pollfd one{descriptor, POLLIN, 0};
  return ::poll(&one, 1, 0) > 0;
}

}  // namespace

Crew::Crew(unsigned workers, Work work, Take take, Apart apart)
    : most_(std::clamp(workers, 1U, most_offspring)),
      work_(std::move(work)),
      take_(std::move(take)),
      apart_(std::move(apart)) {}

Crew::~Crew() { dismiss(true); }

bool Crew::give(Task task) {
  if (stopped_) return false;
  if (most_ == 1 && (apart_ == nullptr || !apart_(task))) {
    while (!stopped_ && !places_.empty()) pump(true, -1);
    if (stopped_) return false;
    Outcome outcome = work_(task);
    stopped_ = !take_(outcome);
    return !stopped_;
  }
  places_.push_back({std::move(task), {}, false});
  held_bytes_ += weight(places_.back());
  waiting_.push_back(first_ + places_.size() - 1);
  deal();
  while (!stopped_ && full()) pump(true, -1);
  return !stopped_;
}

bool Crew::tell(Outcome outcome) {
  if (stopped_) return false;
  places_.push_back({{}, std::move(outcome), true});
  held_bytes_ += weight(places_.back());
  hand_over();
  return !stopped_;
}

void Crew::wait_for(int descriptor) {
  while (!stopped_ && !readable(descriptor)) {
    flush_output();
    if (output_gone()) return;
    if (pump(true, descriptor)) return;
  }
}

bool Crew::finish() {
  while (!stopped_ && !places_.empty()) pump(true, -1);
  dismiss(stopped_);
  return !stopped_;
}

std::size_t Crew::weight(const Place& place) const { return place.task.bytes.size() + place.outcome.part.size(); }

/// One that is too heavy alone still goes through.
bool Crew::full() const {
  return places_.size() >= places_a_worker * most_ || (held_bytes_ > most_held_bytes && places_.size() > 1);
}

// ---- workers

Crew::Worker* Crew::hire() {
  std::array<int, 2> ends{};
  if (::socketpair(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0, ends.data()) != 0) return nullptr;
  flush_output();  // what is gathered here must not be in two processes
  auto minder = std::make_unique<Minder>();
  const pid_t process = start_offspring([&] {
    minder->mind();
    ::close(ends[0]);
    for (const auto& other : workers_) ::close(other->socket);
    be_worker(ends[1], work_);
  });
  ::close(ends[1]);
  if (process < 0) {
    ::close(ends[0]);
    return nullptr;
  }
  ::fcntl(ends[0], F_SETFL, O_NONBLOCK);
  workers_.push_back(std::make_unique<Worker>());
  workers_.back()->process = process;
  workers_.back()->socket = ends[0];
  workers_.back()->minder = std::move(minder);
  return workers_.back().get();
}

/// The one with the least to do; a new one while all have something and more may be had.
Crew::Worker* Crew::free_worker() {
  Worker* best = nullptr;
  for (const auto& worker : workers_)
    if (best == nullptr || worker->at_work.size() < best->at_work.size()) best = worker.get();
  if ((best == nullptr || !best->at_work.empty()) && workers_.size() < most_)
    if (Worker* hired = hire()) return hired;
  return best == nullptr || best->at_work.size() >= tasks_a_worker ? nullptr : best;
}

void Crew::deal() {
  while (!waiting_.empty()) {
    Worker* worker = free_worker();
    if (worker == nullptr) break;
    const std::uint64_t number = waiting_.front();
    waiting_.pop_front();
    Task& task = place(number).task;
    for (const auto& [plugin, whys] : ended_) {
      const bool known =
          std::any_of(task.without.begin(), task.without.end(), [&](const LeftOut& one) { return one.plugin == plugin; });
      if (whys.size() >= most_ended && !known) task.without.push_back({plugin, whys.back()});
    }
    append_frame(worker->to_send, number, spelled(task));
    worker->at_work.push_back(number);
    send(*worker);
  }
  if (!workers_.empty() || waiting_.empty()) return;
  // The system gives no process at all: then it is done here.
  const std::uint64_t number = waiting_.front();
  waiting_.pop_front();
  done(number, work_(place(number).task));
  hand_over();
}

void Crew::send(Worker& worker) const {
  while (!worker.to_send.empty()) {
    const ssize_t sent = ::send(worker.socket, worker.to_send.data(), worker.to_send.size(), MSG_NOSIGNAL);
    if (sent < 0 && errno == EINTR) continue;
    if (sent < 0) return;  // full: goes on when there is room; gone: seen when we read
    worker.to_send.erase(0, static_cast<std::size_t>(sent));
  }
}

void Crew::receive(Worker& worker) {
  std::array<char, 65536> block{};
  for (;;) {
    const ssize_t got = ::recv(worker.socket, block.data(), block.size(), 0);
    if (got < 0 && errno == EINTR) continue;
    if (got < 0 && (errno == EAGAIN || errno == EWOULDBLOCK)) return bring_in(worker);
    if (got <= 0) break;
    worker.received.append(block.data(), static_cast<std::size_t>(got));
    if (static_cast<std::size_t>(got) < block.size()) return bring_in(worker);
  }
  bring_in(worker);
  bury(worker);
}

void Crew::bring_in(Worker& worker) {
  std::size_t at = 0;
  Frame frame;
  while (const std::size_t taken = first_frame(std::string_view(worker.received).substr(at), frame)) {
    assert(!worker.at_work.empty() && worker.at_work.front() == frame.number);
    worker.at_work.pop_front();
    done(frame.number, read_outcome(frame.bytes));
    at += taken;
  }
  worker.received.erase(0, at);
}

/// The task it died at, if any, is done again first; the worker's place is free for another.
void Crew::bury(Worker& worker) {
  const std::string how = end_offspring(worker.process, false);
  ::close(worker.socket);
  waiting_.insert(waiting_.begin(), worker.at_work.begin(), worker.at_work.end());
  if (!worker.at_work.empty() && !worker.minder->plugin().empty()) {
    blame(worker, how);
  } else if (!worker.at_work.empty()) {
    const std::uint64_t number = worker.at_work.front();
    Task& task = place(number).task;
    if (++task.deaths >= most_deaths) {
      waiting_.pop_front();
      task.fault = "the work on it ended by itself, twice: " + (how.empty() ? "without a reason" : how);
      done(number, work_(task));
    }
  }
  std::erase_if(workers_, [&](const auto& one) { return one.get() == &worker; });
}

void Crew::blame(Worker& worker, const std::string& how) {
  const std::string plugin = worker.minder->plugin();
  const std::string why = worker.overdue ? "took longer than its " +
                                               count_of(static_cast<std::size_t>(worker.minder->time().count()), "second") +
                                               " and was ended"
                                         : "ended the process it ran in: " + (how.empty() ? "without a reason" : how);
  ended_[plugin].push_back(why);
  place(worker.at_work.front()).task.without.push_back({plugin, why});
}

void Crew::end_overdue() {
  for (const auto& worker : workers_) {
    if (worker->overdue || !worker->minder->overdue()) continue;
    worker->overdue = true;
    ::kill(worker->process, SIGKILL);
  }
}

void Crew::dismiss(bool kill) {
  for (const auto& worker : workers_) ::close(worker->socket);
  for (const auto& worker : workers_) end_offspring(worker->process, kill);
  workers_.clear();
}

// ---- going on

/// Moves what can be moved, waiting for it when asked to. True when `also` is ready to be read.
bool Crew::pump(bool wait, int also) {
  std::vector<pollfd> ends;
  for (const auto& worker : workers_) {
    const bool sending = !worker->to_send.empty();
    ends.push_back({worker->socket, static_cast<short>(sending ? POLLIN | POLLOUT : POLLIN), 0});
  }
  if (also >= 0) ends.push_back({also, POLLIN, 0});
  const bool any = ::poll(ends.data(), ends.size(), wait ? (apart_ == nullptr ? -1 : milliseconds_a_look) : 0) > 0;
  end_overdue();
  for (const pollfd& end : ends) {
    if (!any || end.revents == 0) continue;
    const auto worker =
        std::find_if(workers_.begin(), workers_.end(), [&](const auto& one) { return one->socket == end.fd; });
    if (worker == workers_.end()) continue;
    if ((end.revents & POLLOUT) != 0) send(**worker);
    if ((end.revents & (POLLIN | POLLHUP | POLLERR)) != 0) receive(**worker);
  }
  hand_over();
  if (!stopped_) deal();
  return any && also >= 0 && ends.back().revents != 0;
}

void Crew::done(std::uint64_t number, Outcome outcome) {
  Place& here = place(number);
  held_bytes_ -= weight(here);
  here.task = {};
  here.outcome = std::move(outcome);
  here.done = true;
  held_bytes_ += weight(here);
}

void Crew::hand_over() {
  while (!stopped_ && !places_.empty() && places_.front().done) {
    Place place = std::move(places_.front());
    places_.pop_front();
    ++first_;
    held_bytes_ -= weight(place);
    stopped_ = !take_(place.outcome);
  }
}

unsigned jobs_of(const std::string& text) {
  unsigned number = 0;
  const char* end = text.data() + text.size();
  const auto read = std::from_chars(text.data(), end, number);
  if (text == "auto") return std::max(1U, std::min(std::thread::hardware_concurrency(), most_offspring));
  return read.ec == std::errc() && read.ptr == end && number <= most_offspring ? number : 0;
}

}  // namespace tamis::cli
