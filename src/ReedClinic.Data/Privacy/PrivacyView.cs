using ReedClinic.Data.People;
using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Data.Privacy;

/// <summary>What erasing somebody would take.</summary>
/// <param name="Name">Whom.</param>
/// <param name="IsSelf">True when they ask for themselves.</param>
/// <param name="Account">True when a sign-in goes.</param>
/// <param name="WorksHere">True when it is a teacher or an owner: what they wrote in other people's records stays.</param>
/// <param name="Batches">How many batches go.</param>
/// <param name="Reeds">How many reeds go.</param>
/// <param name="Letters">How many sent letters go.</param>
/// <param name="BackupsGoneAt">From when on no back-up holds them, when they are erased now.</param>
/// <param name="Hindrances">What has to happen first; nothing when it can be done.</param>
public sealed record ErasureView(
    string Name,
    bool IsSelf,
    bool Account,
    bool WorksHere,
    int Batches,
    int Reeds,
    int Letters,
    DateTimeOffset BackupsGoneAt,
    IReadOnlyList<Problem> Hindrances)
{
    /// <summary>True when they have a sign-in that stays, because it serves for more than sending reeds.</summary>
    public bool KeepsAccount { get; init; }

    /// <summary>What is told to the same form again: they are gone, and so is what could be said of them.</summary>
    internal static ErasureView Gone(bool isSelf) => new("", isSelf, false, false, 0, 0, 0, default, []);
}

/// <summary>What is told on the public page about what is kept.</summary>
/// <param name="Studio">The studio, or null while it has no owner.</param>
/// <param name="Classes">The kinds of data.</param>
/// <param name="BackupDays">How many days a back-up is kept at most.</param>
/// <param name="BackupsGone">The date from which on no back-up holds what is erased today.</param>
public sealed record PrivacyView(StudioView? Studio, IReadOnlyList<DataClass> Classes, int BackupDays, DateTimeOffset BackupsGone);
