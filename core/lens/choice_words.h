#pragma once

#include <array>
#include <string_view>
#include <utility>

#include "core/frame/frame_settings.h"
#include "core/lens/brief.h"
#include "core/light/light_settings.h"
#include "core/optics/section.h"
#include "core/works/works_log.h"
#include "core/works/works_settings.h"

namespace prismwright {

template <class Choice, std::size_t count>
using ChoiceList = std::array<std::pair<Choice, std::string_view>, count>;

/// The words of every choice of the lens, in the order in which they are offered: the same in keys, in the
/// batch program and in the book. Use as kChoiceWords<Division>.
template <class Choice>
inline constexpr int kChoiceWords = 0;

template <>
inline constexpr ChoiceList<Work, 2> kChoiceWords<Work> = {
    {{Work::bullseye, "bullseye"}, {Work::belt, "belt"}}};
template <>
inline constexpr ChoiceList<Faces, 2> kChoiceWords<Faces> = {
    {{Faces::true_curve, "true"}, {Faces::arc, "arc"}}};
template <>
inline constexpr ChoiceList<Joint, 2> kChoiceWords<Joint> = {
    {{Joint::along_ray, "along_ray"}, {Joint::level, "level"}}};
template <>
inline constexpr ChoiceList<Division, 6> kChoiceWords<Division> = {{{Division::side, "side"},
                                                                    {Division::thickness, "thickness"},
                                                                    {Division::count, "count"},
                                                                    {Division::area, "area"},
                                                                    {Division::height, "height"},
                                                                    {Division::by_hand, "by_hand"}}};
template <>
inline constexpr ChoiceList<Power, 5> kChoiceWords<Power> = {{{Power::reflecting, "reflecting"},
                                                              {Power::entry, "entry"},
                                                              {Power::exit, "exit"},
                                                              {Power::hollow_entry, "hollow_entry"},
                                                              {Power::hollow_exit, "hollow_exit"}}};
template <>
inline constexpr ChoiceList<BandFaces, 3> kChoiceWords<BandFaces> = {
    {{BandFaces::as_section, "as_section"}, {BandFaces::true_curve, "true"}, {BandFaces::arc, "arc"}}};
template <>
inline constexpr ChoiceList<BandTurning, 3> kChoiceWords<BandTurning> = {
    {{BandTurning::as_work, "as_work"}, {BandTurning::panel, "panel"}, {BandTurning::lens, "lens"}}};
template <>
inline constexpr ChoiceList<AimAt, 2> kChoiceWords<AimAt> = {
    {{AimAt::level, "level"}, {AimAt::horizon, "horizon"}}};
template <>
inline constexpr ChoiceList<DoorHinge, 2> kChoiceWords<DoorHinge> = {
    {{DoorHinge::left, "left"}, {DoorHinge::right, "right"}}};
template <>
inline constexpr ChoiceList<StockFaces, 2> kChoiceWords<StockFaces> = {
    {{StockFaces::optical, "optical"}, {StockFaces::all, "all"}}};
template <>
inline constexpr ChoiceList<HalfTurn, 2> kChoiceWords<HalfTurn> = {
    {{HalfTurn::own, "own"}, {HalfTurn::shared, "shared"}}};
template <>
inline constexpr ChoiceList<DecisionKind, 3> kChoiceWords<DecisionKind> = {
    {{DecisionKind::accept, "accept"}, {DecisionKind::shim, "shim"}, {DecisionKind::scrap, "scrap"}}};
template <>
inline constexpr ChoiceList<ShrinkDirection, 3> kChoiceWords<ShrinkDirection> = {
    {{ShrinkDirection::length, "length"},
     {ShrinkDirection::depth, "depth"},
     {ShrinkDirection::height, "height"}}};
template <>
inline constexpr ChoiceList<LandShape, 2> kChoiceWords<LandShape> = {
    {{LandShape::flat, "flat"}, {LandShape::radius, "radius"}}};
template <>
inline constexpr ChoiceList<SizeBy, 4> kChoiceWords<SizeBy> = {{{SizeBy::to_deg, "to_deg"},
                                                                {SizeBy::margin_mm, "margin_mm"},
                                                                {SizeBy::side_mm, "side_mm"},
                                                                {SizeBy::thickness_mm, "thickness_mm"}}};

template <>
inline constexpr ChoiceList<InnerFace, 2> kChoiceWords<InnerFace> = {
    {{InnerFace::hollow, "hollow"}, {InnerFace::flat, "flat"}}};
template <>
inline constexpr ChoiceList<LampShape, 4> kChoiceWords<LampShape> = {{{LampShape::cylinder, "cylinder"},
                                                                      {LampShape::sphere, "sphere"},
                                                                      {LampShape::disc, "disc"},
                                                                      {LampShape::tile, "tile"}}};
template <>
inline constexpr ChoiceList<LampSet, 3> kChoiceWords<LampSet> = {
    {{LampSet::one, "one"}, {LampSet::ring, "ring"}, {LampSet::changer, "changer"}}};
template <>
inline constexpr ChoiceList<LampKnown, 2> kChoiceWords<LampKnown> = {
    {{LampKnown::flux, "flux"}, {LampKnown::luminance, "luminance"}}};
template <>
inline constexpr ChoiceList<LampLight, 5> kChoiceWords<LampLight> = {{{LampLight::black_body, "black_body"},
                                                                      {LampLight::illuminant_a, "illuminant_a"},
                                                                      {LampLight::white_led, "white_led"},
                                                                      {LampLight::line, "line"},
                                                                      {LampLight::points, "points"}}};
template <>
inline constexpr ChoiceList<Screen, 4> kChoiceWords<Screen> = {
    {{Screen::none, "none"}, {Screen::red, "red"}, {Screen::green, "green"}, {Screen::yellow, "yellow"}}};
template <>
inline constexpr ChoiceList<TurnWay, 2> kChoiceWords<TurnWay> = {
    {{TurnWay::clockwise, "clockwise"}, {TurnWay::anticlockwise, "anticlockwise"}}};

template <class Choice>
constexpr std::string_view word_of(Choice choice) {
  for (const auto& [each, word] : kChoiceWords<Choice>)
    if (each == choice) return word;
  return kChoiceWords<Choice>.front().second;
}

}  // namespace prismwright
