using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Guardians;

/// <summary>Where a guardian's answer stands, as the student sees it.</summary>
/// <param name="Age">Which side of the set age the student said they are on; null while they haven't.</param>
/// <param name="Consent">Where the answer stands.</param>
/// <param name="Name">The guardian, as the student wrote it; null when nobody was asked.</param>
/// <param name="Email">Their address, as the student wrote it; null when nobody was asked.</param>
/// <param name="AskedAt">When they were asked last.</param>
/// <param name="AskedToday">How often somebody was asked in the last 24 hours.</param>
public sealed record GuardianView(AgeAnswer? Age, Consent Consent, string? Name, string? Email, DateTimeOffset? AskedAt, int AskedToday)
{
    /// <summary>True when they may send reeds.</summary>
    public bool MayTakePart => Consent is not Consent.Withdrawn && (Age is AgeAnswer.OldEnough || Consent is Consent.Given);

    /// <summary>True while somebody may be asked today.</summary>
    public bool MayAsk => AskedToday < GuardianBook.MostAsksADay;
}

/// <summary>What the page behind a guardian's link says. Whoever has the link has the address it was sent to.</summary>
/// <param name="Studio">What the studio is called.</param>
/// <param name="FirstName">The first word of the student's name, and no more.</param>
/// <param name="GuardianName">The guardian, as the student wrote it.</param>
/// <param name="Email">The address that the link was sent to.</param>
/// <param name="HasAccount">True when that address has a sign-in already.</param>
/// <param name="ConsentAge">The age below which the studio asks.</param>
/// <param name="KeepYears">How many years records are kept.</param>
public sealed record GuardianQuestion(
    string Studio, string FirstName, string GuardianName, string Email, bool HasAccount, int ConsentAge, int KeepYears)
{
    /// <summary>How many reeds of the student lie at the studio and can be worked on once there is a yes.</summary>
    public int ReedsHere { get; init; }

    /// <summary>How many of the reeds in hand there came with mould: they stay, whatever is answered.</summary>
    public int KeptApart { get; init; }
}

/// <summary>One student of a guardian.</summary>
/// <param name="Student">Which.</param>
/// <param name="Name">What the student is called.</param>
/// <param name="Consent">Where the guardian's answer stands.</param>
/// <param name="Since">Since when.</param>
/// <param name="Batches">Their batches, the newest first.</param>
/// <param name="Questions">How many questions they asked.</param>
/// <param name="Drafts">How many intakes they are writing.</param>
public sealed record WardView(
    StudentId Student, string Name, Consent Consent, DateTimeOffset Since, IReadOnlyList<WardBatch> Batches, int Questions, int Drafts)
{
    /// <summary>The student's sign-in, whose open pages are told that something changed; null when they have none.</summary>
    public AccountId? Account { get; init; }
}

/// <summary>A batch of a guardian's student.</summary>
/// <param name="Code">Its code.</param>
/// <param name="Stage">Where it is.</param>
/// <param name="Since">When it was announced.</param>
/// <param name="Reeds">How many reeds it has.</param>
public sealed record WardBatch(BatchCode Code, Stage Stage, DateTimeOffset Since, int Reeds)
{
    /// <summary>True once its letter can be read.</summary>
    public bool HasLetter { get; init; }

    /// <summary>Since when it has been where it is.</summary>
    public DateTimeOffset StandsSince { get; init; }

    /// <summary>How many announced reeds weren't in the parcel.</summary>
    public int Missing { get; init; }

    /// <summary>The reeds that aren't played for now.</summary>
    public UnfitReeds Unfit { get; init; } = UnfitReeds.None;

    /// <summary>When the letter that is read now was sent, if it takes the place of one that was sent before.</summary>
    public DateTimeOffset? CorrectedAt { get; init; }
}
