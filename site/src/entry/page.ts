// The page's script. It runs as soon as it is there, so that the engine is on its
// way while the page is still being read; the job opens once all of it is.

import { startEarly, wholePage } from "../engine/loader";
import { openJob } from "../view/opening";
import { listen } from "../view/pressing";
import { startOffline } from "../view/version";

const engine = startEarly();
void wholePage().then(() => openJob(engine, listen)).then(startOffline);
