#include "app/batch/section_draw.h"

#include <gmock/gmock.h>

#include "tests/support/batch_desk.h"

namespace prismwright {
namespace {

using testing::HasSubstr;
using testing::StartsWith;

class SectionDraw : public BatchDesk {
 protected:
  Answer draw(const SectionDrawRequest& request) {
    std::ostringstream out, err;
    Voice voice{out, err};
    const ExitCode code = section_draw(request, voice);
    return {static_cast<int>(code), out.str(), err.str()};
  }
  SectionDrawRequest request_for(const std::string& name) {
    SectionDrawRequest request;
    request.book = make_book({"--order", "4"});
    request.out = at(name);
    request.date = "2026-03-01";
    return request;
  }
};

TEST_F(SectionDraw, WritesWhatTheEndingSays) {
  SectionDrawRequest request = request_for("section.pdf");
  const Answer pdf = draw(request);
  EXPECT_EQ(pdf.code, 0) << pdf.err;
  EXPECT_EQ(pdf.out, at("section.pdf") + "\n");
  EXPECT_THAT(bytes_of(at("section.pdf")), StartsWith("%PDF-"));
  request.out = at("section.DXF");
  EXPECT_EQ(draw(request).code, 0);
  EXPECT_THAT(bytes_of(at("section.DXF")), HasSubstr("AC1009"));
  request.out = at("section.svg");
  request.paper = "A3";
  const Answer svg = draw(request);
  EXPECT_EQ(svg.code, 0) << svg.err;
  EXPECT_THAT(svg.out, StartsWith(at("section.svg") + "\n" + at("section-2.svg") + "\n"));
  EXPECT_THAT(bytes_of(at("section.svg")), HasSubstr(">2026-03-01<"));
  EXPECT_THAT(bytes_of(at("section.svg")), HasSubstr("width=\"297mm\" height=\"420mm\""));
}

TEST_F(SectionDraw, LettersTheSheetsInInches) {
  SectionDrawRequest request = request_for("section.svg");
  request.inches = true;
  ASSERT_EQ(draw(request).code, 0);
  // 250 mm of focal distance.
  EXPECT_THAT(bytes_of(at("section.svg")), HasSubstr(">9.843 in<"));
}

TEST_F(SectionDraw, RefusesWhatCannotBeDrawn) {
  SectionDrawRequest request = request_for("section.png");
  Answer answer = draw(request);
  EXPECT_EQ(answer.code, 2);
  EXPECT_THAT(answer.err, HasSubstr(".svg, .pdf and .dxf"));

  request.out = at("section.pdf");
  request.paper = "A5";
  answer = draw(request);
  EXPECT_EQ(answer.code, 2);
  EXPECT_THAT(answer.err, HasSubstr("choose A4, A3 or Letter"));

  request.paper.clear();
  request.tolerance_mm = 0;
  answer = draw(request);
  EXPECT_EQ(answer.code, 2);
  EXPECT_THAT(answer.err, HasSubstr("between 0.0001 and 1 mm"));

  request.tolerance_mm = 0.002;
  request.out = at("missing/section.pdf");
  EXPECT_EQ(draw(request).code, 3);

  request.book = at("none.lensbook");
  EXPECT_EQ(draw(request).code, 3);
}

}  // namespace
}  // namespace prismwright
