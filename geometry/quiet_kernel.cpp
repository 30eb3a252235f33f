#include "geometry/quiet_kernel.h"

#include <mutex>

#include <Message.hxx>
#include <Message_Messenger.hxx>
#include <Message_PrinterOStream.hxx>

namespace prismwright {

void quiet_kernel() {
  static std::once_flag once;
  std::call_once(once,
                 [] { Message::DefaultMessenger()->RemovePrinters(STANDARD_TYPE(Message_PrinterOStream)); });
}

}  // namespace prismwright
