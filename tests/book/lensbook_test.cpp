#include "core/book/lensbook.h"

#include <algorithm>
#include <chrono>

#include "core/book/sqlite_api.h"
#include "tests/book/book_fixture.h"

namespace prismwright {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::MatchesRegex;
using testing::Optional;

class NewBook : public BookTest {
 protected:
  NewBook() : book_(well(Lensbook::create(file("lens.lensbook"), {}))) {}

  void reopen() {
    { const Lensbook closed = std::move(book_); }
    book_ = well(Lensbook::open(file("lens.lensbook")));
  }

  Lensbook book_;
};

TEST_F(NewBook, HoldsTheValuesItWasMadeWith) {
  EXPECT_THAT(book_.values(), HasValuesOf(LensValues()));
  EXPECT_FALSE(book_.read_only());
  EXPECT_EQ(book_.read_only_reason(), "");
  EXPECT_EQ(book_.migration_note(), "");
  EXPECT_EQ(book_.path(), file("lens.lensbook"));
  EXPECT_FALSE(book_.undo_text());
  EXPECT_FALSE(book_.redo_text());
  EXPECT_THAT(book_.ledger(), IsEmpty());
}

TEST_F(NewBook, IsOneFileOnceClosed) {
  well(book_.edit(with_edge(5), "edge"));
  { const Lensbook closed = std::move(book_); }
  EXPECT_THAT(names(), ElementsAre("lens.lensbook"));
}

TEST_F(NewBook, IsMarkedAsALensbookOfThePresentVersion) {
  // The numbers themselves, for a change of either would shut out every book that exists.
  SQLite::Database db(file("lens.lensbook"));
  EXPECT_EQ(db.execAndGet("PRAGMA application_id").getInt(), 0x50574C42);
  EXPECT_EQ(db.execAndGet("PRAGMA user_version").getInt(), 7);
}

TEST_F(NewBook, IsNeverMadeOverAnotherFile) {
  write_bytes(file("notes.lensbook"), "dear diary");
  const auto refused = Lensbook::create(file("notes.lensbook"), {});
  ASSERT_FALSE(refused.ok());
  EXPECT_EQ(refused.problem().trouble, Trouble::file);
  EXPECT_THAT(refused.problem().text, HasSubstr("is there already"));
  EXPECT_EQ(bytes_of(file("notes.lensbook")), "dear diary");
  EXPECT_THAT(names(), ElementsAre("lens.lensbook", "lens.lensbook.lock", "notes.lensbook"));
}

TEST_F(NewBook, IsNotMadeWhileItIsOpen) {
  EXPECT_EQ(Lensbook::create(file("lens.lensbook"), {}).problem().code, "open_elsewhere");
}

TEST_F(NewBook, IsNotMadeWithValuesThatCannotBe) {
  LensValues values;
  values.material.index = 2.5;
  const auto refused = Lensbook::create(file("other.lensbook"), values);
  ASSERT_FALSE(refused.ok());
  EXPECT_EQ(refused.problem().trouble, Trouble::request);
  EXPECT_EQ(refused.problem().where, "material.index");
  EXPECT_FALSE(std::filesystem::exists(file("other.lensbook")));
}

TEST_F(NewBook, IsNotMadeWhereNothingCanBe) {
  for (const std::string& place : {file("lens.lensbook") + "/below.lensbook", file("nowhere") + "/a.lensbook",
                                   std::string("/proc/a.lensbook")}) {
    const auto refused = Lensbook::create(place, {});
    ASSERT_FALSE(refused.ok()) << place;
    EXPECT_EQ(refused.problem().trouble, Trouble::file) << place;
    EXPECT_THAT(refused.problem().text, HasSubstr("cannot be made")) << place;
  }
}

TEST_F(NewBook, KeepsAnEditWithoutSaving) {
  well(book_.edit(with_edge(5), "ring edge 4 -> 5 mm"));
  EXPECT_THAT(book_.values(), HasValuesOf(with_edge(5)));
  reopen();
  EXPECT_THAT(book_.values(), HasValuesOf(with_edge(5)));
  EXPECT_THAT(book_.undo_text(), Optional(std::string("ring edge 4 -> 5 mm")));
}

TEST_F(NewBook, ReadsBackEveryQuantityExactly) {
  LensValues values;
  values.brief = {
      "Skarv Rock \xC2\xB5", "o'Dwyer; \"quoted\"", "3.5", 375.1, Work::belt, "Fl(2) 10s", "a\n\tb"};
  values.material = {"crown", 1.51 + 1e-15, 2.5};
  values.panels = {{100.1, 3, false}, {79.9, 0, true}, {180, -7.25, false}};
  values.section.faces = Faces::arc;
  values.section.joint = Joint::level;
  values.section.edge_mm = 4.0 + 1.0 / 3.0;
  values.section.refracting_margins_mm = {40.1, 60 + 1.0 / 7.0, 81, 100};
  values.section.upper_start_r_mm = 380.25;
  values.section.upper_start_z_mm = 240;
  values.section.upper_to_deg = 60;
  values.section.lower_to_deg = 40;
  values.section.level_within_deg = 0.4;
  values.frame.heat_range_k = 41.5;
  values.frame.rib_margin_mm = 9;
  values.frame.ring_mm = 7;
  well(check_values(values));
  well(book_.edit(values, "everything"));
  reopen();
  EXPECT_THAT(book_.values(), HasValuesOf(values));
  EXPECT_EQ(book_.values().section.refracting_margins_mm, values.section.refracting_margins_mm);
  EXPECT_EQ(book_.values().material.index, values.material.index);
  EXPECT_EQ(book_.values().brief.notes, values.brief.notes);
  EXPECT_EQ(book_.values().panels[2].axis_shift_deg, -7.25);
}

TEST_F(NewBook, TakesNoStepForAnEditThatChangesNothing) {
  const std::string before = bytes_of(file("lens.lensbook"));
  well(book_.edit(LensValues(), "nothing"));
  EXPECT_FALSE(book_.undo_text());
  EXPECT_EQ(bytes_of(file("lens.lensbook")), before);
}

TEST_F(NewBook, RefusesValuesThatCannotBeAndStaysAsItWas) {
  const Done refused = book_.edit(with_edge(-1), "edge");
  ASSERT_FALSE(refused.ok());
  EXPECT_EQ(refused.problem().where, "section.edge_mm");
  EXPECT_THAT(book_.values(), HasValuesOf(LensValues()));
  EXPECT_FALSE(book_.undo_text());
}

TEST_F(NewBook, UndoesAndRedoesStepByStep) {
  well(book_.edit(with_edge(5), "first"));
  well(book_.edit(with_edge(6), "second"));
  EXPECT_EQ(well(book_.undo()), "second");
  EXPECT_THAT(book_.values(), HasValuesOf(with_edge(5)));
  EXPECT_THAT(book_.undo_text(), Optional(std::string("first")));
  EXPECT_THAT(book_.redo_text(), Optional(std::string("second")));
  EXPECT_EQ(well(book_.undo()), "first");
  EXPECT_THAT(book_.values(), HasValuesOf(LensValues()));
  EXPECT_EQ(well(book_.redo()), "first");
  EXPECT_EQ(well(book_.redo()), "second");
  EXPECT_THAT(book_.values(), HasValuesOf(with_edge(6)));
  EXPECT_FALSE(book_.redo_text());
}

TEST_F(NewBook, KeepsUndoAndRedoOverARestart) {
  well(book_.edit(with_edge(5), "first"));
  well(book_.edit(with_edge(6), "second"));
  well(book_.undo());
  reopen();
  EXPECT_THAT(book_.undo_text(), Optional(std::string("first")));
  EXPECT_EQ(well(book_.redo()), "second");
  EXPECT_THAT(book_.values(), HasValuesOf(with_edge(6)));
  reopen();
  EXPECT_EQ(well(book_.undo()), "second");
  EXPECT_EQ(well(book_.undo()), "first");
  EXPECT_THAT(book_.values(), HasValuesOf(LensValues()));
}

TEST_F(NewBook, DropsWhatWasTakenBackWhenANewStepIsMade) {
  well(book_.edit(with_edge(5), "first"));
  well(book_.edit(with_edge(6), "second"));
  well(book_.undo());
  well(book_.undo());
  well(book_.edit(with_edge(4.5), "third"));
  EXPECT_FALSE(book_.redo_text());
  EXPECT_EQ(book_.redo().problem().code, "no_step");
  reopen();
  EXPECT_EQ(well(book_.undo()), "third");
  EXPECT_THAT(book_.values(), HasValuesOf(LensValues()));
  EXPECT_FALSE(book_.undo_text());
}

TEST_F(NewBook, SaysSoWhenThereIsNothingToTakeBack) {
  EXPECT_EQ(book_.undo().problem().text, "There is no step to take back.");
  EXPECT_EQ(book_.redo().problem().text, "There is no step to do again.");
}

TEST_F(NewBook, UndoesAChangeOfThePanelCount) {
  LensValues six;
  six.panels = equal_panels(6);
  six.panels[3].blind = true;
  LensValues ten;
  ten.panels = equal_panels(10);
  well(book_.edit(six, "six panels"));
  well(book_.edit(ten, "ten panels"));
  well(book_.undo());
  EXPECT_THAT(book_.values(), HasValuesOf(six));
  EXPECT_TRUE(book_.values().panels[3].blind);
  well(book_.undo());
  EXPECT_THAT(book_.values(), HasValuesOf(LensValues()));
  well(book_.redo());
  well(book_.redo());
  reopen();
  EXPECT_THAT(book_.values(), HasValuesOf(ten));
}

TEST_F(NewBook, UndoesFromANumberToABlank) {
  LensValues measured;
  measured.material.index = 1.4918;
  well(book_.edit(measured, "index"));
  well(book_.undo());
  EXPECT_FALSE(book_.values().material.index);
  well(book_.redo());
  EXPECT_EQ(book_.values().material.index, 1.4918);
}

TEST_F(NewBook, LetsStepsAndEditsBeMixedAtWill) {
  // A long walk of edits, undos and redos against a plain list of states.
  std::vector<LensValues> states = {LensValues()};
  std::size_t at = 0;
  for (int turn = 0; turn < 60; ++turn) {
    const int act = (turn * 7 + turn / 5) % 4;
    if (act == 0 && at > 0) {
      well(book_.undo());
      --at;
    } else if (act == 1 && at + 1 < states.size()) {
      well(book_.redo());
      ++at;
    } else {
      states.resize(++at);
      states.push_back(with_edge(4 + 0.01 * (turn + 1)));
      well(book_.edit(states.back(), "edge"));
    }
    ASSERT_THAT(book_.values(), HasValuesOf(states[at])) << "turn " << turn;
    if (turn % 20 == 19) reopen();
  }
}

TEST_F(NewBook, CanBeMovedIntoAnotherHand) {
  Lensbook other = std::move(book_);
  well(other.edit(with_edge(5), "edge"));
  book_ = std::move(other);
  EXPECT_THAT(book_.values(), HasValuesOf(with_edge(5)));
}

TEST_F(NewBook, RefusesEditsWhenItsFileWasMovedAway) {
  std::filesystem::rename(file("lens.lensbook"), file("moved.lensbook"));
  const Done refused = book_.edit(with_edge(5), "edge");
  ASSERT_FALSE(refused.ok());
  EXPECT_EQ(refused.problem().trouble, Trouble::file);
  EXPECT_THAT(refused.problem().text, HasSubstr("was moved or taken away"));
  EXPECT_THAT(book_.values(), HasValuesOf(LensValues()));
}

TEST_F(NewBook, StampsStepsInUtc) {
  well(book_.edit(with_edge(5), "edge"));
  SQLite::Database db(file("lens.lensbook"));
  EXPECT_THAT(db.execAndGet("SELECT when_utc FROM step").getString(),
              MatchesRegex("20[0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-6][0-9]Z"));
}

TEST_F(NewBook, MayHaveAnyNameThatTheSystemTakes) {
  // "file:" would be an address to SQLite, '?' and '#' parts of one.
  for (const char* name : {"file:lens?mode=ro#1.lensbook", "lens 100% \xC3\xA6.lensbook", "no ending"}) {
    { Lensbook made = well(Lensbook::create(file(name), {})); }
    EXPECT_TRUE(std::filesystem::is_regular_file(file(name))) << name;
    EXPECT_THAT(well(Lensbook::open(file(name))).values(), HasValuesOf(LensValues())) << name;
  }
}

TEST_F(NewBook, IsFoundThroughALink) {
  { const Lensbook closed = std::move(book_); }
  std::filesystem::create_symlink(file("lens.lensbook"), file("link.lensbook"));
  Lensbook linked = well(Lensbook::open(file("link.lensbook")));
  well(linked.edit(with_edge(5), "edge"));
  const Lensbook direct = well(Lensbook::open(file("lens.lensbook")));
  EXPECT_TRUE(direct.read_only());
  EXPECT_THAT(direct.values(), HasValuesOf(with_edge(5)));
}

}  // namespace
}  // namespace prismwright
