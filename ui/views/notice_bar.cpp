#include "ui/views/notice_bar.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QMenu>
#include <QPushButton>

#include "ui/style/dress.h"

namespace prismwright {

NoticeBar::NoticeBar(Kind kind, const QString& name, QWidget* parent) : QFrame(parent) {
  setObjectName(name);
  setProperty("notice", kind == Kind::amiss ? "amiss" : "quiet");
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(16, 6, 8, 6);
  row->setSpacing(8);
  auto* sign = new QLabel(this);
  sign->setPixmap(drawn_icon(QStringLiteral("caution")).pixmap(20, 20));
  row->addWidget(sign);
  text_ = new QLabel(this);
  text_->setObjectName(name + ".text");
  text_->setWordWrap(true);
  text_->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
  row->addWidget(text_, 1);
  earlier_ = new QPushButton(this);
  earlier_->setObjectName(name + ".earlier");
  connect(earlier_, &QPushButton::clicked, this, &NoticeBar::showEarlier);
  row->addWidget(earlier_);
  dismiss_ = new QPushButton(tr("Dismiss"), this);
  dismiss_->setObjectName(name + ".dismiss");
  connect(dismiss_, &QPushButton::clicked, this, &QWidget::hide);
  row->addWidget(dismiss_);
  earlier_->hide();
  hide();
}

QString NoticeBar::shown() const { return isHidden() ? QString() : text_->text(); }

void NoticeBar::tell(const QString& sentence) {
  text_->setText(sentence);
  dismiss_->hide();
  setVisible(!sentence.isEmpty());
}

void NoticeBar::add(const QString& sentence) {
  if (sentence.isEmpty()) return;
  all_ << sentence;
  text_->setText(sentence);
  earlier_->setText(tr("Earlier (%1)").arg(all_.size() - 1));
  earlier_->setVisible(all_.size() > 1);
  show();
}

void NoticeBar::showEarlier() {
  QMenu menu(this);
  for (auto sentence = all_.crbegin(); sentence != all_.crend(); ++sentence)
    menu.addAction(QString(*sentence).replace(QLatin1Char('&'), QLatin1String("&&")), this,
                   [this, words = *sentence] { text_->setText(words); });
  menu.exec(earlier_->mapToGlobal(QPoint(0, earlier_->height())));
}

}  // namespace prismwright
