// The page's script: opens the job on the sheet.

import { openJob } from "../view/job";

void openJob();
