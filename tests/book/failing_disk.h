#pragma once

#include <sqlite3.h>
#include <unistd.h>

#include <cstring>
#include <string>

namespace prismwright {

/// A disk under SQLite that behaves until its n-th act of writing (write, cut, sync, take a file away), and
/// then fails. Stands in for every SQLite file of this process while it is in scope.
class FailingDisk {
 public:
  enum class Fault {
    full,      ///< writing answers "no room" from then on
    broken,    ///< every act answers "input/output error" from then on
    power_cut  ///< the process ends at once, in the middle of the act
  };

  FailingDisk(Fault fault, int good_acts) {
    real_ = sqlite3_vfs_find(nullptr);
    fault_ = fault;
    left_ = good_acts;
    met_ = false;
    vfs_ = *real_;
    vfs_.zName = "failing disk";
    vfs_.szOsFile = static_cast<int>(sizeof(File)) + real_->szOsFile;
    vfs_.xOpen = open;
    vfs_.xDelete = remove;
    sqlite3_vfs_register(&vfs_, 1);
  }
  ~FailingDisk() {
    sqlite3_vfs_unregister(&vfs_);
    sqlite3_vfs_register(real_, 1);
  }
  FailingDisk(const FailingDisk&) = delete;
  FailingDisk& operator=(const FailingDisk&) = delete;

  [[nodiscard]] static bool met() { return met_; }  ///< whether the fault came up
  static void mend() { left_ = 1 << 30; }           ///< from now on the disk is well

 private:
  struct File {
    sqlite3_file base;
    [[nodiscard]] sqlite3_file* under() { return reinterpret_cast<sqlite3_file*>(this + 1); }
  };
  static sqlite3_file* under(sqlite3_file* file) { return reinterpret_cast<File*>(file)->under(); }

  static bool fails() {
    if (left_ > 0) {
      --left_;
      return false;
    }
    met_ = true;
    if (fault_ == Fault::power_cut) ::_exit(kCut);
    return true;
  }
  static bool full() { return fault_ == Fault::full; }

  static int open(sqlite3_vfs*, const char* name, sqlite3_file* file, int flags, int* out_flags) {
    static const sqlite3_io_methods methods = make_methods();
    auto* own = reinterpret_cast<File*>(file);
    own->base.pMethods = nullptr;
    const int code = real_->xOpen(real_, name, own->under(), flags, out_flags);
    if (own->under()->pMethods != nullptr) own->base.pMethods = &methods;
    return code;
  }
  static int remove(sqlite3_vfs*, const char* name, int sync_folder) {
    if (!full() && fails()) return SQLITE_IOERR_DELETE;
    return real_->xDelete(real_, name, sync_folder);
  }
  static int write(sqlite3_file* file, const void* bytes, int size, sqlite3_int64 at) {
    if (fails()) {
      // Half of it gets there.
      under(file)->pMethods->xWrite(under(file), bytes, size / 2, at);
      return full() ? SQLITE_FULL : SQLITE_IOERR_WRITE;
    }
    return under(file)->pMethods->xWrite(under(file), bytes, size, at);
  }
  static int cut(sqlite3_file* file, sqlite3_int64 size) {
    if (!full() && fails()) return SQLITE_IOERR_TRUNCATE;
    return under(file)->pMethods->xTruncate(under(file), size);
  }
  static int sync(sqlite3_file* file, int flags) {
    if (!full() && fails()) return SQLITE_IOERR_FSYNC;
    return under(file)->pMethods->xSync(under(file), flags);
  }
  static sqlite3_io_methods make_methods() {
    sqlite3_io_methods methods{};
    methods.iVersion = 1;
    methods.xClose = [](sqlite3_file* f) { return under(f)->pMethods->xClose(under(f)); };
    methods.xRead = [](sqlite3_file* f, void* to, int size, sqlite3_int64 at) {
      return under(f)->pMethods->xRead(under(f), to, size, at);
    };
    methods.xWrite = write;
    methods.xTruncate = cut;
    methods.xSync = sync;
    methods.xFileSize = [](sqlite3_file* f, sqlite3_int64* size) {
      return under(f)->pMethods->xFileSize(under(f), size);
    };
    methods.xLock = [](sqlite3_file* f, int level) { return under(f)->pMethods->xLock(under(f), level); };
    methods.xUnlock = [](sqlite3_file* f, int level) { return under(f)->pMethods->xUnlock(under(f), level); };
    methods.xCheckReservedLock = [](sqlite3_file* f, int* held) {
      return under(f)->pMethods->xCheckReservedLock(under(f), held);
    };
    methods.xFileControl = [](sqlite3_file* f, int what, void* with) {
      return under(f)->pMethods->xFileControl(under(f), what, with);
    };
    methods.xSectorSize = [](sqlite3_file* f) { return under(f)->pMethods->xSectorSize(under(f)); };
    methods.xDeviceCharacteristics = [](sqlite3_file* f) {
      return under(f)->pMethods->xDeviceCharacteristics(under(f));
    };
    return methods;
  }

 public:
  static constexpr int kCut = 77;  ///< exit code of a process ended by a power cut

 private:
  sqlite3_vfs vfs_{};
  static inline sqlite3_vfs* real_ = nullptr;
  static inline Fault fault_ = Fault::full;
  static inline int left_ = 0;
  static inline bool met_ = false;
};

}  // namespace prismwright
