using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Recordings;

/// <summary>A sound or a photograph of a reed that is kept.</summary>
public sealed class Recording
{
    private Recording()
    {
    }

    /// <summary>Makes it of what was sent and what is kept of that.</summary>
    /// <param name="upload">What was sent.</param>
    /// <param name="clean">What is kept of the file.</param>
    /// <param name="sha256">The sum over what is kept, 64 small hexadecimal figures.</param>
    /// <param name="at">When all of it was here.</param>
    public Recording(Upload upload, MediaReading.Clean clean, string sha256, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(upload);
        ArgumentNullException.ThrowIfNull(clean);
        Id = upload.Id;
        Reed = upload.Reed;
        Kind = upload.Kind;
        Type = clean.Type;
        File = upload.File;
        Bytes = clean.Bytes.Length;
        Sha256 = sha256;
        Milliseconds = clean.Milliseconds;
        Words = upload.Words;
        PassId = upload.PassId;
        AtSequence = upload.AtSequence;
        RecordedBy = upload.By;
        FromStudio = upload.FromStudio;
        RecordedAt = at;
    }

    /// <summary>Which.</summary>
    public RecordingId Id { get; private set; }

    /// <summary>Of which reed.</summary>
    public ReedId Reed { get; private set; }

    /// <summary>What it is.</summary>
    public RecordingKind Kind { get; private set; }

    /// <summary>What kind of file it is, as its content said.</summary>
    public MediaType Type { get; private set; }

    /// <summary>The name of its file; nothing of it comes from a user.</summary>
    public string File { get; private set; } = "";

    /// <summary>How large the file is.</summary>
    public int Bytes { get; private set; }

    /// <summary>The sum over the file, 64 small hexadecimal figures.</summary>
    public string Sha256 { get; private set; } = "";

    /// <summary>How long it plays; null for a photograph, or where only playing tells.</summary>
    public int? Milliseconds { get; private set; }

    /// <summary>What is heard or seen in it, in words: for those who can't hear or see it.</summary>
    public string? Words { get; private set; }

    /// <summary>The pass it belongs to, if it is known.</summary>
    public PassId? PassId { get; private set; }

    /// <summary>The place in the reed's log at which it was made, so that it plays beside what was done then; 0 before the first entry.</summary>
    public int AtSequence { get; private set; }

    /// <summary>Whether a memo was put into the letter. Until then it is the studio's alone.</summary>
    public bool InLetter { get; private set; }

    /// <summary>Who made it.</summary>
    public AccountId RecordedBy { get; private set; }

    /// <summary>Whether they work here.</summary>
    public bool FromStudio { get; private set; }

    /// <summary>When it was there.</summary>
    public DateTimeOffset RecordedAt { get; private set; }

    /// <summary>Says what is heard or seen in it.</summary>
    /// <param name="words">A few words, or nothing.</param>
    /// <returns>What can't be taken; empty when it was noted.</returns>
    public IReadOnlyList<Problem> Describe(string? words)
    {
        var problems = new List<Problem>();
        var read = PlainText.Read(words, nameof(Words), RecordingLimits.Words, problems, severalLines: true);
        Words = problems.Count == 0 ? read : Words;
        return problems;
    }

    /// <summary>Puts a memo into the letter, or takes it out.</summary>
    /// <param name="isIn">Whether it is in it.</param>
    /// <exception cref="InvalidOperationException">It is no memo: everything else is in the letter anyway.</exception>
    public void PutInLetter(bool isIn) =>
        InLetter = Kind == RecordingKind.VoiceMemo ? isIn : throw new InvalidOperationException("Only a memo is put into the letter.");
}
