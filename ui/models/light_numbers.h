#pragma once

#include <QString>

namespace prismwright {

/// Figures of the light as the maker reads them: no more digits than the work is good for, thousands set apart.

/// "41 230", "812", "3.4": four significant digits at most, whole numbers from 100 on.
QString light_number(double value);
/// "41 230 cd".
QString candela_text(double cd);
/// "19.0 nmi".
QString miles_text(double nmi);
/// "0.192 s", "12.4 s".
QString seconds_text(double s);
/// "1.65 deg"; with a real minus sign.
QString degrees_text(double deg);
/// "0.18 %": three decimals under a thousandth, none for nothing.
QString percent_text(double share);

}  // namespace prismwright
