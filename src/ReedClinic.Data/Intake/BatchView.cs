using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Intake;

/// <summary>A whole batch and whose it is, as it stood when it was read.</summary>
/// <param name="Batch">The batch with its reeds and questions.</param>
/// <param name="Student">Whose reeds they are.</param>
public sealed record BatchView(Batch Batch, Student Student)
{
    /// <summary>When the letter that is read now was sent, if it takes the place of one that was sent before.</summary>
    public DateTimeOffset? CorrectedAt { get; init; }

    /// <summary>What is known of its posting; told where the batch is looked at by its code.</summary>
    public BatchPosting Posting { get; init; } = new();

    /// <summary>The reeds that go home put aside and without a verdict; told where the batch is looked at by its code.</summary>
    public IReadOnlyList<AsideReed> Aside { get; init; } = [];
}

/// <summary>One batch in a list.</summary>
/// <param name="Code">Its code.</param>
/// <param name="StudentName">Whose reeds they are.</param>
/// <param name="Stage">Where it is.</param>
/// <param name="Since">Since when it has been there.</param>
/// <param name="SubmittedAt">When it was announced.</param>
/// <param name="Reeds">How many reeds it has.</param>
/// <param name="Missing">How many of them weren't in the parcel.</param>
/// <param name="Extra">How many were in the parcel without having been announced.</param>
/// <param name="OpenQuestions">How many questions have no answer yet.</param>
public sealed record BatchRow(
    BatchCode Code,
    string StudentName,
    Stage Stage,
    DateTimeOffset Since,
    DateTimeOffset SubmittedAt,
    int Reeds,
    int Missing,
    int Extra,
    int OpenQuestions)
{
    /// <summary>False while nobody may work on the reeds, because their student needs a guardian who agrees and has none.</summary>
    public bool MayBeWorkedFor { get; init; } = true;

    /// <summary>True when a guardian agreed once and took it back.</summary>
    public bool IsPaused { get; init; }

    /// <summary>True once its letter can be read.</summary>
    public bool HasLetter { get; init; }

    /// <summary>When the letter that is read now was sent, if it takes the place of one that was sent before.</summary>
    public DateTimeOffset? CorrectedAt { get; init; }

    /// <summary>The reeds that aren't played for now.</summary>
    public UnfitReeds Unfit { get; init; } = UnfitReeds.None;

    /// <summary>True while a correction of its letter is begun and neither sent nor dropped.</summary>
    public bool IsBeingCorrected { get; init; }
}

/// <summary>An intake that is still being written.</summary>
/// <param name="Id">Which draft.</param>
/// <param name="Form">What was typed so far.</param>
/// <param name="Version">The version to save against.</param>
/// <param name="SavedAt">When it was last saved.</param>
/// <param name="Became">The batch that came of it, if it was sent already.</param>
public sealed record DraftView(DraftId Id, IntakeForm Form, Guid Version, DateTimeOffset SavedAt, BatchCode? Became)
{
    /// <summary>True while its student writes nothing, because a guardian took their consent back: it is kept, and can be read.</summary>
    public bool IsPaused { get; init; }
}

/// <summary>What came of looking for a code: the batch, or what is wrong with the code and which codes come near it.</summary>
/// <param name="Found">The batch.</param>
/// <param name="Trouble">One sentence that says what is wrong, where it can be told.</param>
/// <param name="Near">Batches whose code is one slip of the finger away, with a sentence on the difference.</param>
public sealed record CodeSearch(BatchView? Found, string? Trouble, IReadOnlyList<NearCode> Near);

/// <summary>A batch whose code is one slip of the finger away from what was typed.</summary>
/// <param name="Code">Its code.</param>
/// <param name="Difference">How what was typed differs from it.</param>
/// <param name="StudentName">Whose it is.</param>
/// <param name="Stage">Where it is.</param>
public sealed record NearCode(BatchCode Code, string Difference, string StudentName, Stage Stage);
