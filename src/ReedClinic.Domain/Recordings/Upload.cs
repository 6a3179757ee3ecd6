using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Recordings;

/// <summary>Where, when and by whom something is sent.</summary>
/// <param name="Id">The id that the recording will have.</param>
/// <param name="File">The name of the file that it will be kept in.</param>
/// <param name="By">Who sends it.</param>
/// <param name="FromStudio">Whether they work here.</param>
/// <param name="AtSequence">The place in the log at which it was made.</param>
/// <param name="At">When it was begun.</param>
public readonly record struct UploadStamp(RecordingId Id, string File, AccountId By, bool FromStudio, int AtSequence, DateTimeOffset At);

/// <summary>A file that is on its way here, piece by piece.</summary>
public sealed class Upload
{
    private Upload()
    {
    }

    /// <summary>The id that the recording will have.</summary>
    public RecordingId Id { get; private set; }

    /// <summary>Of which reed.</summary>
    public ReedId Reed { get; private set; }

    /// <summary>What it is.</summary>
    public RecordingKind Kind { get; private set; }

    /// <summary>The name of the file that it will be kept in; nothing of it comes from a user.</summary>
    public string File { get; private set; } = "";

    /// <summary>How large it is, as its sender said.</summary>
    public int Bytes { get; private set; }

    /// <summary>How much of it is here and safe.</summary>
    public int Received { get; private set; }

    /// <summary>What is heard or seen in it, in words.</summary>
    public string? Words { get; private set; }

    /// <summary>The pass it belongs to, if it is known.</summary>
    public PassId? PassId { get; private set; }

    /// <summary>The place in the log at which it was made; 0 before the first entry.</summary>
    public int AtSequence { get; private set; }

    /// <summary>Who sends it.</summary>
    public AccountId By { get; private set; }

    /// <summary>Whether they work here.</summary>
    public bool FromStudio { get; private set; }

    /// <summary>When it was begun.</summary>
    public DateTimeOffset StartedAt { get; private set; }

    /// <summary>Why it isn't taken, once that is known; null until then.</summary>
    public RecordingRefusal? Refusal { get; private set; }

    /// <summary>True when all of it is here.</summary>
    public bool IsWhole => Received == Bytes;

    /// <summary>Begins.</summary>
    /// <param name="stamp">Where, when and by whom.</param>
    /// <param name="wish">What is to be sent.</param>
    public static Outcome<Upload> Begin(UploadStamp stamp, RecordingWish wish)
    {
        ArgumentNullException.ThrowIfNull(wish);
        var problems = new List<Problem>();
        var words = PlainText.Read(wish.Words, nameof(Words), RecordingLimits.Words, problems, severalLines: true);
        if (wish.Bytes <= 0 || wish.Bytes > RecordingLimits.Bytes(wish.Kind))
        {
            problems.Add((wish.Bytes <= 0 ? RecordingRefusal.Empty : RecordingRefusal.TooLarge).Problem(wish.Kind));
        }

        return problems.Count > 0
            ? new Outcome<Upload>.Refused(problems)
            : new Outcome<Upload>.Done(new Upload
            {
                Id = stamp.Id,
                Reed = wish.Reed,
                Kind = wish.Kind,
                File = stamp.File,
                Bytes = (int)wish.Bytes,
                Words = words,
                PassId = wish.PassId,
                AtSequence = Math.Clamp(wish.AtSequence ?? stamp.AtSequence, 0, stamp.AtSequence),
                By = stamp.By,
                FromStudio = stamp.FromStudio,
                StartedAt = stamp.At,
            });
    }

    /// <summary>It isn't taken, and won't be.</summary>
    /// <param name="why">Why not.</param>
    public void Refuse(RecordingRefusal why) => Refusal = why;

    /// <summary>What arrived isn't what was sent: it has to come again from its beginning.</summary>
    public void StartAgain() => Received = 0;
}
