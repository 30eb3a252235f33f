#pragma once

namespace prismwright {

/// Chance that a value of Student's t with so many degrees of freedom (above 0) lies below t, within 1e-12.
/// By the incomplete beta function's continued fraction (Abramowitz and Stegun 26.5.8, 26.7.1; published).
double student_t_below(double t, double degrees);

/// The t below which a value lies with this chance (above 0, below 1), within 1e-9 of itself.
double student_t_at(double chance, double degrees);

}  // namespace prismwright
