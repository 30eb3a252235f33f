#pragma once

#include <QString>

class QWidget;

namespace prismwright {

/// Asks for a name (dialog bench.saveTo) and writes the table of the laser bench there. Answers what was done
/// or why not, as a sentence; blank when it was given up.
QString save_bench_file(const QString& csv, QWidget* parent);

}  // namespace prismwright
