#pragma once

#include <QObject>
#include <functional>
#include <memory>
#include <optional>
#include <vector>

#include "ui/models/despatch_work.h"
#include "ui/models/work_thread.h"
#include "ui/models/workbench.h"

namespace prismwright {

/// How the last writing of a pack ended: a report, or a sentence.
struct PackEnd {
  std::shared_ptr<const PackReport> report;
  QString refusal;
};

/// The desk from which a lens goes out, in a worker thread: lists what goes out of the newest solids while
/// somebody looks, draws the piece that is looked at (the newest wish wins), and writes packs. A pack that is
/// being written is not disturbed by edits: it is of the values that it was begun with. Keeps the maker's wish
/// of each book. All signals come in the window's thread.
class DespatchMaker : public QObject {
  Q_OBJECT

 public:
  enum class Task { none, listing, drawing, packing };

  explicit DespatchMaker(Workbench* bench, QObject* parent = nullptr);
  ~DespatchMaker() override;

  [[nodiscard]] const DespatchWish& wish() const { return wish_; }
  /// A choice of the page: kept for the book, and what it touches is worked out anew.
  void setWish(const DespatchWish& wish);

  /// Null until it is known; of earlier values as long as isStale().
  [[nodiscard]] std::shared_ptr<const DespatchListing> listing() const { return listing_; }
  [[nodiscard]] bool isStale() const;
  /// Why the listing is not known or stale, as a sentence; empty when it is neither.
  [[nodiscard]] QString reason() const;
  [[nodiscard]] Task task() const { return task_; }
  /// Stop was asked for and the work in hand has not ended yet.
  [[nodiscard]] bool isStopping() const { return stopping_; }

  /// The listing was stopped or refused; listAgain() takes it up.
  [[nodiscard]] bool isHalted() const { return halted_ && isReady(); }

  /// Whether somebody looks.
  void setWatched(bool watched);
  /// The piece to be looked at; drawn as soon as it can be.
  void look(const DespatchPiece& piece);
  [[nodiscard]] const DespatchSight& sight() const { return sight_; }

  /// Writes a pack of these groups; nothing happens while one is being written or the listing is stale.
  void pack(const std::vector<DespatchGroup>& groups);
  [[nodiscard]] const PackEnd& packEnd() const { return end_; }
  /// Stops the work in hand.
  void stop();
  /// Lists anew: after a stop, or when the folder may have changed on the disk.
  void listAgain();

  /// For tests and pictures: runs the event loop until there is nothing left to do, at most `timeout_ms`.
  bool waitUntilDone(int timeout_ms);

 signals:
  void changed();  ///< listing, task or reason
  void sighted();  ///< another sight
  void packed();   ///< a pack is written, or was refused or stopped
  void progress(double share, const QString& what);

 private:
  using Take = std::function<void()>;  ///< what the window's thread does with a result
  using Work = std::function<Take(const Progress& progress)>;

  void followBook();
  void followBench();
  void askAnew();
  void forgetDesk();
  /// Takes up the most pressing of what is wanted, unless something is in hand.
  void next();
  void start(Task task, Work work);
  /// The work in hand is wanted no longer, and its result will not be heard.
  void drop();
  void startListing();
  void startDrawing();
  void startFirstSight();
  void startPacking();
  void takeSight(const DespatchPiece& piece, const Outcome<DespatchSight>& sight);
  [[nodiscard]] bool isReady() const;
  [[nodiscard]] DespatchWish wishNow() const;  ///< with the unit of the window

  Workbench* bench_;
  DespatchWish wish_;
  std::shared_ptr<const MadeLens> made_;  ///< that the source was taken from
  std::shared_ptr<const DespatchSource> source_;
  std::shared_ptr<DespatchDeskKept> desk_;  ///< of the source; used by the worker thread alone
  std::shared_ptr<const DespatchListing> listing_;
  QString refusal_;  ///< why the listing could not be made
  bool listed_ = false;
  bool halted_ = false;
  bool watched_ = false;
  bool stopping_ = false;
  std::optional<DespatchPiece> wanted_;  ///< to be looked at
  bool drawn_ = true;                    ///< the sight is of what is wanted
  DespatchSight sight_;
  std::optional<std::vector<DespatchGroup>> to_pack_;
  PackEnd end_;
  Task task_ = Task::none;
  int job_ = 0;
  std::unique_ptr<WorkThread> thread_;
};

}  // namespace prismwright
