#pragma once

#include <QBrush>
#include <QColor>
#include <QPalette>
#include <QPen>
#include <QString>

#include "core/lens/brief.h"
#include "core/light/flux_budget.h"
#include "core/optics/proof.h"
#include "core/works/stage.h"
#include "geometry/clearances.h"

/// Every colour of the window by its role. Colour carries meaning only, and never alone: the sign that goes
/// with it stands beside it here. Nothing else in the window names a colour by its number.
namespace prismwright::palette {

enum class Theme { light, dark };
/// The set in use; light unless the window was started on a dark desktop.
Theme theme();
void use(Theme theme);
/// The set that suits the desktop's own window colour.
Theme theme_of(const QPalette& desktop);

QColor paper();       ///< behind everything
QColor surface();     ///< tables, fields, drawings
QColor ink();         ///< text and lines
QColor muted_ink();   ///< ranges, notes, heads
QColor hairline();    ///< rules, grid lines, borders
QColor brass();       ///< the one action that matters on a page; metal
QColor sea();         ///< selection
QColor on_sea();      ///< text on sea
QColor on_brass();    ///< text on brass
QColor glass_fill();  ///< translucent
QColor glass_edge();
QColor well();   ///< a tell-tale that is well
QColor amiss();  ///< a tell-tale that is not, refusals, clashes

QColor fate(Fate fate);
/// Colour, pattern and width of a ray by its fate; `width_px` is that of a plain ray.
QPen fate_pen(Fate fate, double width_px = 1.0);
QString fate_words(Fate fate);

/// A panel's light by its screen: colour, hatching over it, letter of the lists of lights and word.
QColor screen(Screen screen);
QBrush screen_hatching(Screen screen);
QString screen_sign(Screen screen);
QString screen_words(Screen screen);
QPen screen_pen(Screen screen, double width_px = 1.0);  ///< line and dashes of its own
QColor dark_of_light();                                 ///< the dark between two flashes

/// What becomes of the lamp's light.
QColor light_fate(LightFate fate);
QString light_fate_words(LightFate fate);

QColor stage(Stage stage);
QString stage_sign(Stage stage);   ///< two letters, or a cross for scrapped
QString stage_words(Stage stage);  ///< translated name
bool stage_hatched(Stage stage);

QColor verdict(Verdict verdict);
QString verdict_sign(Verdict verdict);  ///< tick, bar, cross
QString verdict_words(Verdict verdict);

/// Ink or white, whichever reads better on `ground`.
QColor ink_on(const QColor& ground);
/// Contrast of two opaque colours, 1 to 21 (WCAG 2.1, relative luminance).
double contrast(const QColor& a, const QColor& b);
/// The colour `share` of the way from a to b.
QColor between(const QColor& a, const QColor& b, double share);

/// Qt's palette made of these roles.
QPalette widget_palette();

}  // namespace prismwright::palette
