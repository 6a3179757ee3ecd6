namespace ReedClinic.Domain.Intake;

/// <summary>How long each text of an intake may be, in characters, and how far its numbers may go.</summary>
public static class IntakeLimits
{
    /// <summary>How to tell a reed from the others.</summary>
    public const int HowToRecognise = 200;

    /// <summary>What bothers its owner.</summary>
    public const int Bothers = 1000;

    /// <summary>Who tied it.</summary>
    public const int TiedBy = 80;

    /// <summary>What was tried last.</summary>
    public const int LastTried = 500;

    /// <summary>What its owner likes about it.</summary>
    public const int Likes = 500;

    /// <summary>The most hours that a reed can have been played.</summary>
    public const int HoursPlayed = 2000;

    /// <summary>So many hours few reeds are played: whoever says more is asked whether it is so. Common practice.</summary>
    public const int LongHours = 100;

    /// <summary>The most questions about one reed, and the most about all of them.</summary>
    public const int Questions = 5;

    /// <summary>The address of a video of the bench.</summary>
    public const int VideoLink = 500;

    /// <summary>The note on a parcel as a whole.</summary>
    public const int ArrivalNote = 500;
}
