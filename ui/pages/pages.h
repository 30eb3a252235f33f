#pragma once

#include <QWidget>

#include "ui/models/workbench.h"

namespace prismwright {

/// The pages of the rail, each made with the workbench that it reads from and sends its edits to.
/// Each page sits in files of its own: brief_page, section_page, lens_page, light_page, frame_page,
/// works_page, despatch_page.
QWidget* make_brief_page(Workbench* bench, QWidget* parent);
QWidget* make_section_page(Workbench* bench, QWidget* parent);
QWidget* make_lens_page(Workbench* bench, QWidget* parent);
QWidget* make_light_page(Workbench* bench, QWidget* parent);
QWidget* make_frame_page(Workbench* bench, QWidget* parent);
QWidget* make_works_page(Workbench* bench, QWidget* parent);
QWidget* make_despatch_page(Workbench* bench, QWidget* parent);

}  // namespace prismwright
