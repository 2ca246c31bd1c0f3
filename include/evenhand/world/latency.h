/*
 * latency.h - measured delays of pairs of a loudspeaker and a microphone
 *
 *	delays:
 *	  - card: "USB Audio"
 *	    through: "ALSA"
 *	    microphone: "Headset"
 *	    microphone_through: "ALSA"
 *	    rate: 48000
 *	    microphone_rate: 48000
 *	    delay_us: 7310
 *	    spread_us: 60
 *	    day: 2026-03-02
 *
 * A delay is what is left beyond the times that both cards give of themselves:
 * what they do not know of (converters, a wireless way) and the air between
 * loudspeaker and microphone.  So a sample that is placed by the cards' own
 * times was in the air so much earlier, seen from somebody who hears the
 * loudspeaker where the microphone is.
 *
 * The file is kept whole, for its owner alone (0600).  It is read strictly: one
 * value that cannot be, and nothing of it counts.  It holds no sound.
 *
 * Only the main thread.
 */
#ifndef EVENHAND_WORLD_LATENCY_H
#define EVENHAND_WORLD_LATENCY_H

#include <stdbool.h>

#include "evenhand/base/fault.h"
#include "evenhand/world/device.h"
#include "evenhand/world/paths.h"

enum { LATENCIES_MAX = 32 };

/* Two cards as they were opened; another rate is another way through them. */
struct latency_pair {
	char card[DEVICE_NAME_MAX], through[DEVICE_NAME_MAX];
	char microphone[DEVICE_NAME_MAX], microphone_through[DEVICE_NAME_MAX];
	int rate, microphone_rate;
};

struct latency {
	struct latency_pair pair;
	int us;	       /* LATENCY_LEAST_US..LATENCY_MOST_US */
	int spread_us; /* three quarters of the sweeps lie so near to it */
	int day;       /* day number when it was measured */
};

struct latencies {
	int count;
	struct latency at[LATENCIES_MAX]; /* the newest last */
	char path[PATH_BYTES_MAX];	  /* of the file; "" without a home */
};

/*
 * Reads the file; it need not be there.  What is wrong is added to the faults,
 * where places point into *l, and then nothing is known.
 */
void latency_read(struct latencies *l, struct faults *faults);

/* What is known of a pair; NULL: nothing. */
const struct latency *latency_of(
    const struct latencies *l, const struct latency_pair *pair);

/*
 * Keeps a delay in place of an older one of its pair, or of the oldest one when
 * there is no room, and writes the file.  False: it could not be written.
 */
bool latency_keep(
    struct latencies *l, const struct latency *one, struct fault *f);

#endif
