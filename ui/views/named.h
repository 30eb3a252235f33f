#pragma once

#include <QLatin1String>

namespace prismwright {

/// The widget with its object name, by which tests and style sheets find it.
template <class Widget>
Widget* named(Widget* widget, const char* name) {
  widget->setObjectName(QLatin1String(name));
  return widget;
}

}  // namespace prismwright
