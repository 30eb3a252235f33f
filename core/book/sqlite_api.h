#pragma once

// SQLite declares its session functions only when asked before its header is first read, so every file of the
// book takes SQLite from here.
#ifndef SQLITE_ENABLE_SESSION
#define SQLITE_ENABLE_SESSION 1
#endif
#ifndef SQLITE_ENABLE_PREUPDATE_HOOK
#define SQLITE_ENABLE_PREUPDATE_HOOK 1
#endif
#include <SQLiteCpp/SQLiteCpp.h>
#include <sqlite3.h>
