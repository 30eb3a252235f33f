#include "core/book/schema.h"
#include "tests/book/golden_story.h"
#include "tests/book/works_entries.h"

namespace prismwright {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;

/// One golden book per version of the file, each written by the program of that version and kept for ever.
class GoldenBook : public BookTest, public testing::WithParamInterface<int> {
 protected:
  /// A copy that the test may write to.
  std::string copy_of(int version, const std::string& name = "lens.lensbook") {
    const std::string golden = std::string(GOLDEN_FOLDER) + "/v" + std::to_string(version) + ".lensbook";
    if (!std::filesystem::is_regular_file(golden)) throw std::runtime_error(golden + " is missing");
    write_bytes(file(name), bytes_of(golden));
    return file(name);
  }
};

/// The variant of the section that the story keeps at its beginning.
void expect_golden_variant(const Lensbook& book, int version) {
  if (version < 3) {
    EXPECT_THAT(book.variants(), testing::IsEmpty());
    return;
  }
  ASSERT_EQ(book.variants().size(), 1u);
  const SectionVariant& kept = book.variants().front();
  EXPECT_EQ(kept.name, "as first drawn");
  const TakenVariant taken = well(with_variant(book.values(), kept));
  EXPECT_THAT(taken.notes, testing::IsEmpty());
  EXPECT_THAT(section_texts(taken.values), testing::ContainerEq(section_texts(golden_start(version))));
}

/// The readings of the bench, which version 5 brought.
void expect_golden_readings(const Lensbook& book, int version) {
  if (version < 5) {
    EXPECT_THAT(book.readings(), testing::IsEmpty());
    return;
  }
  ASSERT_EQ(book.readings().size(), 3u);
  for (std::size_t i = 0; i < 3; ++i) {
    const BenchReading& reading = book.readings()[i];
    const BenchReading told = golden_readings()[i];
    EXPECT_EQ(reading.number, static_cast<long long>(i) + 1);
    EXPECT_EQ(reading.when_utc.size(), std::string("2026-01-01T00:00:00Z").size());
    EXPECT_EQ(reading.mark, told.mark);
    EXPECT_EQ(reading.height_mm, told.height_mm);
    EXPECT_EQ(reading.aside_mm, told.aside_mm);
    EXPECT_EQ(reading.board_mm, told.board_mm);
    EXPECT_EQ(reading.by, told.by);
    EXPECT_EQ(reading.note, told.note);
  }
}

/// The loads, all that was written down of them and the photograph's bytes, which version 7 brought.
void expect_golden_log(const Lensbook& book, int version) {
  if (version < 7) {
    EXPECT_TRUE(book.works_log().empty());
    return;
  }
  const LedgerEntry& casting = book.ledger().at(4);
  EXPECT_EQ(casting.mark, golden_casting().mark);
  EXPECT_EQ(casting.note, golden_casting().note);
  EXPECT_EQ(casting.serial, 2);
  EXPECT_EQ(casting.load, 1);
  WorksLog told = golden_log();
  told.loads = golden_loads();
  for (Photograph& photograph : told.photographs) photograph.bytes.clear();  // not read with the rest
  EXPECT_THAT(book.works_log(), SaysWhat(told));
  EXPECT_EQ(well(book.photograph_bytes(1)), golden_picture());
}

/// What version 1 did not hold yet comes with the values it was always worked out with.
void expect_golden_story(const Lensbook& book, int version) {
  EXPECT_THAT(book.values(), HasValuesOf(golden_panels(version)));
  EXPECT_EQ(book.values().section.level_within_deg, 0.5);
  EXPECT_EQ(book.values().frame.heat_range_k, 30);
  EXPECT_EQ(book.undo_text(), "panels");
  EXPECT_EQ(book.redo_text(), "margins");
  ASSERT_EQ(book.ledger().size(), version < 7 ? 4u : 5u);
  EXPECT_EQ(book.ledger()[1].serial, version < 7 ? 0 : 1);
  EXPECT_EQ(book.ledger()[1].load, 0);
  EXPECT_EQ(book.ledger()[1].mark, "P01-U02");
  EXPECT_EQ(book.ledger()[1].from, Stage::drawn);
  EXPECT_EQ(book.ledger()[1].to, Stage::cast);
  EXPECT_EQ(book.ledger()[1].by, "E. Marsh");
  EXPECT_EQ(book.ledger()[1].note, "first trial\nin resin");
  EXPECT_EQ(book.ledger()[2].note, "bubble \"as a pea\"");
  EXPECT_EQ(book.ledger()[2].back_to, version < 2 ? std::nullopt : std::optional(Stage::mastered));
  EXPECT_EQ(book.ledger()[3].to, Stage::mastered);
  EXPECT_EQ(book.ledger()[3].back_to, std::nullopt);
  expect_golden_variant(book, version);
  expect_golden_readings(book, version);
  expect_golden_log(book, version);
}

TEST_P(GoldenBook, TellsItsStory) {
  Lensbook book = well(Lensbook::open(copy_of(GetParam())));
  EXPECT_FALSE(book.read_only()) << book.read_only_reason();
  expect_golden_story(book, GetParam());
}

TEST_P(GoldenBook, TellsItReadOnlyWithoutBeingTouched) {
  const std::string path = copy_of(GetParam());
  const std::string before = bytes_of(path);
  Lensbook book = well(Lensbook::open(path, Lensbook::Access::read_only));
  expect_golden_story(book, GetParam());
  EXPECT_EQ(bytes_of(path), before);
  EXPECT_THAT(names(), ElementsAre("lens.lensbook"));
}

TEST_P(GoldenBook, KeepsItsStepsWorking) {
  Lensbook book = well(Lensbook::open(copy_of(GetParam())));
  EXPECT_EQ(well(book.redo()), "margins");
  EXPECT_THAT(book.values(), HasValuesOf(golden_margins(GetParam())));
  EXPECT_EQ(well(book.undo()), "margins");
  EXPECT_EQ(well(book.undo()), "panels");
  EXPECT_THAT(book.values(), HasValuesOf(golden_edge(GetParam())));
  EXPECT_EQ(well(book.undo()), "edge");
  EXPECT_THAT(book.values(), HasValuesOf(golden_start(GetParam())));
}

TEST_P(GoldenBook, KeepsAndTakesBackAVariant) {
  Lensbook book = well(Lensbook::open(copy_of(GetParam())));
  const std::size_t before = book.variants().size();
  well(book.keep_variant("another"));
  EXPECT_EQ(book.variants().size(), before + 1);
  EXPECT_EQ(well(book.undo()), "keep variant 'another'");
  expect_golden_variant(book, GetParam());
  EXPECT_EQ(well(book.undo()), "panels");
}

TEST_P(GoldenBook, TakesNewStepsOnNewQuantities) {
  const std::string path = copy_of(GetParam());
  LensValues values = golden_panels(GetParam());
  values.section.level_within_deg = 0.25;
  values.frame.heat_range_k = 40;
  {
    Lensbook book = well(Lensbook::open(path));
    well(book.edit(values, "limits"));
  }
  Lensbook book = well(Lensbook::open(path));
  EXPECT_EQ(book.migration_note(), "");
  EXPECT_THAT(book.values(), HasValuesOf(values));
  well(book.undo());
  EXPECT_THAT(book.values(), HasValuesOf(golden_panels(GetParam())));
  well(book.redo());
  EXPECT_THAT(book.values(), HasValuesOf(values));
}

INSTANTIATE_TEST_SUITE_P(OfEveryVersion, GoldenBook, testing::Range(1, kBookVersion + 1),
                         [](const auto& one) { return "V" + std::to_string(one.param); });

using Migration = GoldenBook;

TEST_F(Migration, KeepsTheOldFileBesideToTheByte) {
  const std::string path = copy_of(1);
  const std::string old = bytes_of(path);
  {
    const Lensbook book = well(Lensbook::open(path));
    EXPECT_THAT(book.migration_note(),
                HasSubstr("was brought from book version 1 to 7. The old file is kept as "));
    EXPECT_THAT(book.migration_note(), HasSubstr("lens.v1.lensbook"));
  }
  EXPECT_THAT(names(), ElementsAre("lens.lensbook", "lens.v1.lensbook"));
  EXPECT_EQ(bytes_of(file("lens.v1.lensbook")), old);
  EXPECT_NE(bytes_of(path), old);
}

TEST_F(Migration, NeverOverwritesAnotherFile) {
  const std::string path = copy_of(1);
  write_bytes(file("lens.v1.lensbook"), "another");
  {
    const Lensbook book = well(Lensbook::open(path));
    EXPECT_THAT(book.migration_note(), HasSubstr("lens.v1-2.lensbook"));
  }
  EXPECT_EQ(bytes_of(file("lens.v1.lensbook")), "another");
  EXPECT_THAT(names(), ElementsAre("lens.lensbook", "lens.v1-2.lensbook", "lens.v1.lensbook"));
}

TEST_F(Migration, ThatWasCutOffIsTakenUpAgain) {
  // Killed after the old file was kept and before the new one took its place.
  const std::string path = copy_of(1);
  copy_of(1, "lens.v1.lensbook");
  write_bytes(file("lens.lensbook.migrating"), "half written");
  {
    Lensbook book = well(Lensbook::open(path));
    expect_golden_story(book, 1);
  }
  EXPECT_THAT(names(), ElementsAre("lens.lensbook", "lens.v1.lensbook"));
}

TEST_F(Migration, ThatCannotBeWrittenShowsTheBookReadOnly) {
  const std::string path = copy_of(1);
  const std::string old = bytes_of(path);
  std::filesystem::create_directory(file("lens.lensbook.migrating"));  // in the way of the copy
  write_bytes(file("lens.lensbook.migrating") + "/x", "");
  Lensbook book = well(Lensbook::open(path));
  EXPECT_TRUE(book.read_only());
  EXPECT_THAT(book.read_only_reason(), HasSubstr("could not be brought to the present version"));
  expect_golden_story(book, 1);
  EXPECT_EQ(bytes_of(path), old);
}

TEST_F(Migration, LeadsToTheSchemaOfANewBook) {
  for (int from = 1; from < kBookVersion; ++from) {
    SQLite::Database db(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    make_schema(db, from);
    EXPECT_EQ(schema_of(db), expected_schema(from));
    migrate_schema(db);
    EXPECT_EQ(schema_of(db), expected_schema(kBookVersion));
    EXPECT_EQ(user_version(db), kBookVersion);
  }
}

TEST_F(Migration, KnowsEverySchemaByItsSum) {
  for (int version = 1; version <= kBookVersion; ++version) {
    SQLite::Database db(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    make_schema(db, version);
    EXPECT_TRUE(schema_fits(db, version)) << version << ": its sum is " << schema_mark(schema_of(db));
    for (int other = 1; other <= kBookVersion; ++other) EXPECT_EQ(schema_fits(db, other), other == version);
    db.exec("DROP TRIGGER ledger_loses_no_line");
    EXPECT_FALSE(schema_fits(db, version));
  }
}

TEST_F(Migration, OfADamagedOldBookIsRefused) {
  const std::string path = copy_of(1);
  {
    SQLite::Database db(path, SQLite::OPEN_READWRITE);
    db.exec("UPDATE section SET edge_mm = 4.5");
  }
  const std::string before = bytes_of(path);
  EXPECT_EQ(Lensbook::open(path).problem().code, "damaged");
  EXPECT_EQ(bytes_of(path), before);
  EXPECT_THAT(names(), ElementsAre("lens.lensbook"));
}

TEST(BookSchema, HasAColumnForEveryQuantity) {
  const std::vector<std::string> schema = expected_schema(kBookVersion);
  SQLite::Database db(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
  make_schema(db);
  for (const Quantity& quantity : quantities()) {
    const std::size_t dot = quantity.key.find('.');
    const std::string table = quantity.key.substr(0, dot);
    if (table == "panels" || quantity.key == "brief.panels") continue;  // one row per panel, in table panel
    SQLite::Statement query(db, "SELECT count(*) FROM pragma_table_info(?) WHERE name = ?");
    query.bind(1, table);
    query.bind(2, quantity.key.substr(dot + 1));
    ASSERT_TRUE(query.executeStep());
    EXPECT_EQ(query.getColumn(0).getInt(), 1) << "no column for " << quantity.key;
  }
}

}  // namespace
}  // namespace prismwright
