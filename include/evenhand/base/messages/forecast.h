/* forecast.h - sentences of the forecast; see ../message_list.h */

/* --- today's page --- */
MESSAGE(M_FORECAST_WEEKS, "ww",
    "At this pace the rest of the programme may take {0} to {1} weeks. Only an "
    "estimate.")
MESSAGE(M_FORECAST_ABOUT, "w",
    "At this pace the rest of the programme may take about {0} "
    "{0|week|weeks}. Only an estimate.")

/* --- the numbers used --- */
MESSAGE(M_FORECAST_HABIT, "wwn",
    "You practised on {0} of the last {1} days: {2} days a week.")
MESSAGE(M_FORECAST_USUAL, "tw",
    "Practice days that are usual for what is left: {0}. No stage counts for "
    "fewer than {1}.")
MESSAGE(M_FORECAST_SO_FAR, "tw",
    "\"{0}\" has had {1} practice {1|day|days}.")
MESSAGE(M_FORECAST_PACE_NONE, "",
    "No stage is behind you yet, so your own pace is not known: it is taken as "
    "usual, with much room to both sides.")
MESSAGE(M_FORECAST_PACE, "wwwn",
    "{0} {0|stage|stages} behind you took {1} practice {1|day|days} where {2} "
    "are usual. So what is left is counted at {3} times what is usual.")
MESSAGE(M_FORECAST_LESSONS, "",
    "Your teacher lets you on, so each stage waits for the next weekly lesson.")
MESSAGE(M_FORECAST_DRAWS, "www",
    "Of {0} courses drawn by chance from these numbers, eight of ten end "
    "after {1} to {2} weeks.")

/* --- why nothing is said --- */
MESSAGE(M_FORECAST_OVER, "", "The programme is done: there is nothing left to "
    "estimate.")
MESSAGE(M_FORECAST_PAIN, "dw",
    "Pain was noted on {0}. For {1} days after it nothing is estimated: there "
    "is no hurry.")
MESSAGE(M_FORECAST_EARLY, "w",
    "In the first {0} weeks nothing is estimated: your habit is not known yet.")
MESSAGE(M_FORECAST_SELDOM, "www",
    "You practised on {0} of the last {1} days. With fewer than {2} days a week "
    "nothing is estimated.")
