#pragma once

#include <cstddef>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "core/drawing/card_pages.h"
#include "core/drawing/house_words.h"

namespace prismwright {

/// A column of a document's table.
struct DocumentColumn {
  std::string head;
  double share = 0.1;  ///< of the table's width; shares of a table add to 1
  bool right = false;  ///< numbers end at its right edge
};

/// Pages that are read from beginning to end: chapters, sentences, facts, tables whose cells are broken into
/// lines, pictures and room for figures. What does not fit goes on to the next sheet, the foot of each stays
/// free for the title block. All is in proportion to the paper: on A3 a third larger than on A4.
class DocumentPages {
 public:
  using Cells = std::vector<std::string>;
  using Fact = std::pair<std::string, std::string>;

  explicit DocumentPages(Paper paper);

  [[nodiscard]] double scale() const { return scale_; }
  [[nodiscard]] double wide() const { return pages_.wide() - 2 * inset(); }
  [[nodiscard]] SheetMaker& maker() { return pages_.maker(); }
  /// Begins a new sheet, unless nothing stands on this one yet.
  void turn_page();

  /// The name of the thing, large, and what the paper is.
  void title(const std::string& words, const std::string& under);
  /// A chapter with a rule below; kept on one sheet with so much of what follows, mm before scaling.
  void chapter(const std::string& words, double with_mm = 20);
  void section(const std::string& words, double with_mm = 14);
  void paragraph(const std::string& words);
  /// Sentences with a short stroke before each.
  void points(const std::vector<std::string>& sentences);
  /// Smaller words, for what stands below a table or a figure.
  void note(const std::string& words);
  /// Names and values in two columns of the page, read down the left one first.
  void facts(const std::vector<Fact>& facts);
  /// A table over the whole width; the head is said again on a new sheet. `together`: the table begins
  /// on a new sheet where this one has no room for all of it. A row that begins with `kTotal` is
  /// set bold with a rule above.
  void table(const std::vector<DocumentColumn>& columns, const std::vector<Cells>& rows, bool together = false);
  static constexpr const char* kTotal = "\x01";
  /// A table of short cells that runs down one half of the sheet and then the other.
  void twin_table(const std::vector<DocumentColumn>& columns, const std::vector<Cells>& rows);
  /// The picture over the page's width, no higher than this before scaling; its proportions are kept. Nothing
  /// is drawn where it holds no points.
  void picture(const std::shared_ptr<const PointImage>& image, double most_mm);
  /// Room for a figure, so high before scaling.
  PaperBox figure(double high_mm);
  void skip(double mm) { pages_.skip(mm * scale_); }

  /// All sheets with their title blocks, which name this subject.
  [[nodiscard]] Drawing finished(const std::string& subject, const HouseWords& words);

 private:
  struct PlacedPicture {
    std::size_t sheet = 0;
    DrawnPicture picture;
  };
  struct Grid {
    Cells heads;
    std::vector<double> widths;
    std::vector<bool> right;
  };
  [[nodiscard]] double inset() const;
  [[nodiscard]] PaperPoint place() const;
  [[nodiscard]] Grid grid_of(const std::vector<DocumentColumn>& columns, double wide) const;
  /// Turns the page where there is no room; answers whether it did.
  bool need(double mm);
  [[nodiscard]] double room_of(const Grid& grid, std::size_t column) const;
  [[nodiscard]] double row_height(const Grid& grid, const Cells& cells, bool bold) const;
  void write_row(const Grid& grid, const Cells& cells, PaperPoint top_left, bool bold);
  double write_head(const Grid& grid, PaperPoint top_left);  ///< answers its height
  void write_heading(const std::string& words, double size_mm);
  void write_words(const std::string& words, double size_mm, double indent_mm);
  /// Answers the height that it takes; `write`: writes it too.
  double write_fact(const Fact& fact, PaperPoint top_left, double wide, bool write);
  void write_twins(const Grid& grid, const std::vector<Cells>& rows, double apart_mm);

  double scale_ = 1;
  CardPages pages_;
  std::size_t sheets_ = 1;
  std::vector<PlacedPicture> pictures_;
};

/// The paper of a document: as wanted, A4 where nothing is said or A5 was (its sheets are too narrow for
/// tables).
Paper document_paper(const HouseWords& words);

}  // namespace prismwright
