#pragma once

#include <functional>
#include <map>
#include <memory>
#include <string>
#include <vector>

#include <gp_Trsf.hxx>

#include "geometry/gap_finder.h"

namespace prismwright {

/// One piece of measuring, in the frame in which its first part was made.
struct GapJob {
  std::string mark;
  std::function<GapsFound()> measure;  ///< throws Standard_Failure
  GapsFound found;
};

/// Finds which wanted pairs are congruent, mirror images among them, and keeps one job for each kind.
class GapJobs {
 public:
  explicit GapJobs(const std::vector<GapWanted>& wanted);

  std::vector<GapJob>& jobs() { return jobs_; }
  /// The gaps of every wanted pair, once all jobs are done.
  [[nodiscard]] std::vector<GapsFound> results() const;

 private:
  // How a wanted pair is had from a job.
  struct Use {
    std::size_t job = 0;
    gp_Trsf to_lens;
    bool mirrored = false;
  };
  Use use_of(const GapWanted& pair);
  void use_rib(const GapWanted& pair, Use& use);
  void use_turned(const GapWanted& pair, Use& use);
  void use_kernel(const GapWanted& pair, Use& use);
  std::size_t job_for(const std::string& key, const std::string& mark, std::function<GapsFound()> measure);
  bool is_as_planned(const GapWanted& pair);
  bool is_symmetric(const TopoDS_Shape& made);
  std::shared_ptr<const RibRoom> room_of(RibPlan rib);

  std::vector<GapJob> jobs_;
  std::vector<Use> uses_;
  std::map<std::string, std::size_t> by_key_;
  std::map<std::string, bool> planned_;
  std::map<std::string, bool> symmetric_;
  std::map<std::string, std::shared_ptr<const RibRoom>> rooms_;
};

}  // namespace prismwright
