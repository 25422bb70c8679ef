"""Files and column headings of the OneRoster 1.2 CSV binding (1EdTech, 2022), in the standard's order, from memory."""

_ALL = "sourcedId status dateLastModified "

FIELDS = {
    name: tuple(fields.split())
    for name, fields in {
        "manifest": "propertyName value",
        "academicSessions": _ALL + "title type startDate endDate parentSourcedId schoolYear",
        "orgs": _ALL + "name type identifier parentSourcedId",
        "courses": _ALL + "schoolYearSourcedId title courseCode grades orgSourcedId subjects subjectCodes",
        "classes": _ALL + "title grades courseSourcedId classCode classType location schoolSourcedId termSourcedIds "
        "subjects subjectCodes periods",
        "users": _ALL + "enabledUser username userIds givenName familyName middleName identifier email sms phone "
        "agentSourcedIds grades password userMasterIdentifier resourceSourcedIds preferredGivenName "
        "preferredMiddleName preferredFamilyName primaryOrgSourcedId pronouns",
        "roles": _ALL + "userSourcedId roleType role beginDate endDate orgSourcedId userProfileSourcedId",
        "enrollments": _ALL + "classSourcedId schoolSourcedId userSourcedId role primary beginDate endDate",
        "categories": _ALL + "title weight",
        "lineItems": _ALL + "title description assignDate dueDate classSourcedId categorySourcedId "
        "gradingPeriodSourcedId resultValueMin resultValueMax schoolSourcedId",
        "results": _ALL + "lineItemSourcedId studentSourcedId scoreStatus score scoreDate comment textScore "
        "classSourcedId inProgress incomplete late missing",
    }.items()
}

# Files of the standard that a class of this course has nothing to put in.
ABSENT = (
    "classResources",
    "courseResources",
    "demographics",
    "lineItemLearningObjectiveIds",
    "lineItemScoreScales",
    "resources",
    "resultLearningObjectiveIds",
    "resultScoreScales",
    "scoreScales",
    "userProfiles",
    "userResources",
)
