/*
 * message_list.h - every sentence evenhand can say, room by room
 *
 * No include guard: it is read several times, with MESSAGE(id, signature,
 * sentence) defined anew each time.  A sentence of a fault says what was
 * found and what to write or do instead, begins with a small letter (a place
 * stands before it) and has no full stop at its end.
 */
#include "evenhand/base/messages/audio.h"
#include "evenhand/base/messages/check.h"
#include "evenhand/base/messages/class.h"
#include "evenhand/base/messages/coach.h"
#include "evenhand/base/messages/command.h"
#include "evenhand/base/messages/device.h"
#include "evenhand/base/messages/file.h"
#include "evenhand/base/messages/first.h"
#include "evenhand/base/messages/forecast.h"
#include "evenhand/base/messages/history.h"
#include "evenhand/base/messages/lesson.h"
#include "evenhand/base/messages/measure.h"
#include "evenhand/base/messages/pages.h"
#include "evenhand/base/messages/paper.h"
#include "evenhand/base/messages/record.h"
#include "evenhand/base/messages/routine.h"
#include "evenhand/base/messages/script.h"
#include "evenhand/base/messages/session.h"
#include "evenhand/base/messages/settings.h"
#include "evenhand/base/messages/sound.h"
#include "evenhand/base/messages/track.h"
#include "evenhand/base/messages/view.h"
#include "evenhand/base/messages/where.h"
#include "evenhand/base/messages/words.h"
#include "evenhand/base/messages/world.h"
