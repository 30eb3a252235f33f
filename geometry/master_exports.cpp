#include "geometry/master_exports.h"

#include <filesystem>
#include <new>

#include <fmt/format.h>
#include <Standard_Failure.hxx>
#include <TopLoc_Location.hxx>

#include "geometry/mesh_of_solid.h"
#include "geometry/mesh_stl.h"
#include "geometry/safe_file.h"
#include "geometry/step_writer.h"
#include "geometry/three_mf_writer.h"

namespace prismwright {

namespace {

class MasterWriter {
 public:
  MasterWriter(const std::string& folder, const MasterExportChoice& choice)
      : folder_(folder), choice_(choice) {}

  Done write_step(const MasterBody& master) {
    if (!choice_.step) return {};
    const auto text = step_text({master.name, master.shape, PartStuff::glass});
    if (!text) return text.problem();
    return write(master.name + ".step", *text);
  }

  Done write_meshes(const PrintPart& part) {
    if (!choice_.stl && !choice_.three_mf) return {};
    const TopoDS_Shape laid = part.shape.Moved(TopLoc_Location(part.lay.place));
    const auto mesh = mesh_within(part.name, laid, part.volume_mm3, choice_.volume_within);
    if (!mesh) return mesh.problem();
    if (choice_.stl) {
      if (const Done done = write(part.name + ".stl", mesh_stl_bytes(part.name, *mesh)); !done) return done;
    }
    return choice_.three_mf ? write(part.name + ".3mf", three_mf_bytes(part.name, *mesh)) : Done{};
  }

  [[nodiscard]] std::vector<std::string> take() { return std::move(written_); }

 private:
  Done write(const std::string& file, const std::string& bytes) {
    const std::string path = (std::filesystem::path(folder_) / file).string();
    if (Done done = write_whole(path, bytes); !done) return done;
    written_.push_back(path);
    return {};
  }

  std::string folder_;
  const MasterExportChoice& choice_;
  std::vector<std::string> written_;
};

}  // namespace

Outcome<std::vector<std::string>> export_master(const MasterBody& master, const PrintPlan& plan,
                                                const std::string& folder, const MasterExportChoice& choice) {
  if (const Done ready = ready_folder(folder); !ready) return ready.problem();
  try {
    MasterWriter writer(folder, choice);
    if (const Done done = writer.write_step(master); !done) return done.problem();
    for (const PrintPart& part : plan.parts) {
      if (const Done done = writer.write_meshes(part); !done) return done.problem();
    }
    return writer.take();
  } catch (const Standard_Failure& failure) {
    return file_problem(
        "write", master.name,
        fmt::format("{}: its files could not be made ({}).", master.name, failure.GetMessageString()));
  } catch (const std::bad_alloc&) {
    return file_problem(
        "write", master.name,
        fmt::format("{}: memory ran out while its files were made. Write fewer kinds of file at once.",
                    master.name));
  }
}

}  // namespace prismwright
