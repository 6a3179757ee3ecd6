namespace ReedClinic.Web.Features.Journey;

/// <summary>The steps of a batch as its owner sees them: the telling, and then where it is.</summary>
public enum JourneyStep
{
    /// <summary>The student says what bothers them.</summary>
    Telling,

    /// <summary>The parcel is in the post.</summary>
    OnItsWay,

    /// <summary>The parcel was opened and the reeds were ticked off.</summary>
    Here,

    /// <summary>The reeds are tested and worked on.</summary>
    AtTheBench,

    /// <summary>The letter can be read.</summary>
    LetterSent,

    /// <summary>The reeds were posted back.</summary>
    OnItsWayHome,

    /// <summary>The reeds are with the student again.</summary>
    Home,
}
