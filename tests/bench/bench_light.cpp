#include "tests/bench/bench_light.h"

#include <algorithm>

namespace prismwright::bench {

namespace {
constexpr double kTurn = 2 * 3.14159265358979323846;
}

Field::Field(Vector along, double angle) {
  const Vector a = square_to(along);
  const Vector e = std::cos(angle) * a + std::sin(angle) * cross(along, a);
  e_ = {e.x, e.y, e.z};
}

Field::Cosines Field::cosines(const Face& face) {
  const double near_side = std::abs(dot(face.in, face.normal));
  const double ratio = face.n_from / face.n_to;
  const double rest = 1 - ratio * ratio * (1 - near_side * near_side);
  return {near_side, rest < 0 ? Complex(0, std::sqrt(-rest)) : Complex(std::sqrt(rest), 0)};
}

// Fresnel's equations for the amplitudes, s across the plane of incidence, p = s x direction on every branch.
Field::Parts Field::reflection(const Face& face) {
  const auto [c1, c2] = cosines(face);
  const double n1 = face.n_from, n2 = face.n_to;
  return {(n1 * c1 - n2 * c2) / (n1 * c1 + n2 * c2), (n2 * c1 - n1 * c2) / (n2 * c1 + n1 * c2)};
}

Vector Field::across(const Face& face) {
  const Vector s = cross(face.in, face.normal);
  const double size = length(s);
  return size > 1e-9 ? (1 / size) * s : square_to(face.in);
}

Field::Parts Field::split(const Face& face, Vector s) const {
  const Vector p = cross(s, face.in);
  return {e_[0] * s.x + e_[1] * s.y + e_[2] * s.z, e_[0] * p.x + e_[1] * p.y + e_[2] * p.z};
}

void Field::put(Parts parts, Vector s, Vector out) {
  const double size = std::sqrt(std::norm(parts.s) + std::norm(parts.p));
  const Complex es = parts.s / size, ep = parts.p / size;
  const Vector p = cross(s, out);
  e_ = {es * s.x + ep * p.x, es * s.y + ep * p.y, es * s.z + ep * p.z};
}

double Field::reflected_share(const Face& face) const {
  const Parts parts = split(face, across(face));
  const Parts r = reflection(face);
  return std::norm(r.s * parts.s) + std::norm(r.p * parts.p);
}

void Field::reflect(const Face& face) {
  const Vector s = across(face);
  const Parts parts = split(face, s);
  const Parts r = reflection(face);
  put({r.s * parts.s, r.p * parts.p}, s, face.out);
}

void Field::refract(const Face& face) {
  const Vector s = across(face);
  const Parts parts = split(face, s);
  const auto [c1, c2] = cosines(face);
  const double n1 = face.n_from, n2 = face.n_to;
  put({parts.s / (n1 * c1 + n2 * c2), parts.p / (n2 * c1 + n1 * c2)}, s, face.out);
}

bool refracted(Vector in, Vector normal, double n_from, double n_to, Vector& out) {
  const double ratio = n_from / n_to;
  const double c = dot(in, normal);
  const double rest = 1 - ratio * ratio * (1 - c * c);
  if (rest <= 0) return false;
  out = ratio * in + (std::copysign(std::sqrt(rest), c) - ratio * c) * normal;
  return true;
}

double BenchLamp::surface_mm2() const {
  if (sphere) return kTurn / 2 * width_mm * width_mm;
  return kTurn / 2 * width_mm * (height_mm + width_mm / 2);
}

double BenchLamp::flux_lm() const { return kTurn / 2 * luminance_cd_mm2 * surface_mm2(); }

BenchLamp::Ray BenchLamp::ray(Dice& dice) const {
  const double radius = width_mm / 2;
  Vector place, normal;
  const double turn = kTurn * dice.roll();
  if (sphere) {
    const double z = 2 * dice.roll() - 1;
    const double r = std::sqrt(1 - z * z);
    normal = {r * std::cos(turn), r * std::sin(turn), z};
    place = radius * normal;
  } else if (dice.roll() * (height_mm + radius) < height_mm) {
    normal = {std::cos(turn), std::sin(turn), 0};
    place = {radius * normal.x, radius * normal.y, (dice.roll() - 0.5) * height_mm};
  } else {
    const double side = dice.roll() < 0.5 ? -1 : 1;
    const double r = radius * std::sqrt(dice.roll());
    normal = {0, 0, side};
    place = {r * std::cos(turn), r * std::sin(turn), side * height_mm / 2};
  }
  // Cosine law: evenly over the disc below the hemisphere.
  const double sine2 = dice.roll();
  const double about = kTurn * dice.roll();
  const Vector a = square_to(normal);
  const Vector along = std::sqrt(1 - sine2) * normal +
                       std::sqrt(sine2) * (std::cos(about) * a + std::sin(about) * cross(normal, a));
  return {place + middle, along};
}

double BenchLamp::meet(Vector from, Vector along) const {
  const Vector o = from - middle;
  const double radius = width_mm / 2;
  const double flat = sphere ? 1 : 0;  // weight of z in the round form x^2 + y^2 + flat z^2 = r^2
  const double a = along.x * along.x + along.y * along.y + flat * along.z * along.z;
  const double b = o.x * along.x + o.y * along.y + flat * o.z * along.z;
  const double c = o.x * o.x + o.y * o.y + flat * o.z * o.z - radius * radius;
  const double rest = b * b - a * c;
  if (rest < 0 || a <= 0) return -1;
  double low = (-b - std::sqrt(rest)) / a;
  double high = (-b + std::sqrt(rest)) / a;
  if (!sphere && along.z != 0) {
    const double bottom = (-height_mm / 2 - o.z) / along.z;
    const double top = (height_mm / 2 - o.z) / along.z;
    low = std::max(low, std::min(bottom, top));
    high = std::min(high, std::max(bottom, top));
  } else if (!sphere && std::abs(o.z) > height_mm / 2) {
    return -1;
  }
  return low < high ? low : -1;
}

}  // namespace prismwright::bench
