#pragma once

#include <cstddef>
#include <vector>

#include "core/works/mould_facts.h"
#include "geometry/mould_skin.h"

namespace prismwright {

/// How a master does when it is drawn along a unit direction: height, least draft, undercuts face by face.
///
/// A face is steep where its true normal stands within `draft_deg` of square to the draw. A place is hidden
/// where a line from it along the draw, on the side that it faces, meets the master again; places are the
/// middles of the skin's triangles (at most about 1200, the largest first).
DrawFacts judged_draw(const MouldSkin& skin, SpaceVector along, double draft_deg);

/// The same, with the triangles of the skin that are undercut.
struct JudgedDraw {
  struct Piece {
    std::size_t triangle = 0;  ///< index into the skin's triangles
    std::size_t undercut = 0;  ///< index into facts.undercuts
  };
  DrawFacts facts;
  std::vector<Piece> pieces;
};
JudgedDraw judged_pieces(const MouldSkin& skin, SpaceVector along, double draft_deg);

/// What the search gives: the best draw, and whether every face lies wholly on one side of it.
struct ChosenDraw {
  DrawFacts facts;
  bool one_sided = true;  ///< no face turns from the one half to the other within itself
};

/// The best of many draw directions: along the axes, along the faces' normals and over the half sphere, each
/// also bettered until its least draft is greatest. Directions free of undercuts win over such as can be drawn
/// but are steep, these over hidden ones; among free ones a draft of 3 deg or more wins, then the least
/// height, with 3 % given away for a direction along an axis.
ChosenDraw chosen_draw(const MouldSkin& skin, double draft_deg);

}  // namespace prismwright
