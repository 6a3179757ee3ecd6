namespace ReedClinic.Domain.Intake;

/// <summary>Where a batch is. Each stage has the day it began. An intake that is still being written is no batch yet.</summary>
public enum Stage
{
    /// <summary>The student has a code and posts the parcel.</summary>
    OnItsWay,

    /// <summary>The parcel was opened and the reeds were ticked off.</summary>
    Here,

    /// <summary>The first reed was tested or worked on.</summary>
    AtTheBench,

    /// <summary>The letter can be read.</summary>
    LetterSent,

    /// <summary>The reeds were posted back.</summary>
    OnItsWayHome,

    /// <summary>The reeds are with the student again.</summary>
    Home,
}
