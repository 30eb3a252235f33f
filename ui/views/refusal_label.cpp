#include "ui/views/refusal_label.h"

#include "ui/models/shown_numbers.h"
#include "ui/views/named.h"

namespace prismwright {

RefusalLabel::RefusalLabel(const char* name, QWidget* parent) : QLabel(parent) {
  named(this, name);
  setProperty("refusal", true);
  setWordWrap(true);
  hide();
}

void RefusalLabel::tell(const QString& words) {
  setText(words);
  setVisible(!words.isEmpty());
}

void RefusalLabel::tell(const Done& done) { tell(done ? QString() : sentence_of(done.problem())); }

}  // namespace prismwright
