using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Intake;

/// <summary>One reed of a batch: what its owner says of it, and what was seen when it arrived.</summary>
public sealed class Reed
{
    private Reed()
    {
    }

    /// <summary>Which reed.</summary>
    public ReedId Id { get; private set; }

    /// <summary>The batch it came with.</summary>
    public BatchId Batch { get; private set; }

    /// <summary>The number on its tag, from 1.</summary>
    public int Number { get; private set; }

    /// <summary>How to tell it from the others.</summary>
    public string HowToRecognise { get; private set; } = "";

    /// <summary>What bothers its owner; empty for a reed that nobody announced.</summary>
    public string Bothers { get; private set; } = "";

    /// <summary>How far the teacher may go.</summary>
    public Permission Permission { get; private set; }

    /// <summary>What was marked on the two-sided scales.</summary>
    public ReedScales Scales { get; private set; } = ReedScales.Nothing;

    /// <summary>Who tied it, in words; null when not known.</summary>
    public string? TiedBy { get; private set; }

    /// <summary>How it came to be; null when not known.</summary>
    public MadeHow? MadeHow { get; private set; }

    /// <summary>How long it has been played, in minutes; null when not known.</summary>
    public int? MinutesPlayed { get; private set; }

    /// <summary>What was tried on it last; null when nothing was said.</summary>
    public string? LastTried { get; private set; }

    /// <summary>What it is for; null when not known.</summary>
    public ReedUse? UsedFor { get; private set; }

    /// <summary>What its owner likes about it; null when nothing was said.</summary>
    public string? Likes { get; private set; }

    /// <summary>Whether it was in the parcel.</summary>
    public Presence Presence { get; private set; }

    /// <summary>How its upper blade is told from the lower.</summary>
    public string? UpperMark { get; private set; }

    /// <summary>The hand that wound the thread.</summary>
    public WindingHand Winding { get; private set; }

    /// <summary>Which way the blades overlap.</summary>
    public Overlap Overlap { get; private set; }

    /// <summary>Whether the overlap goes the way the winding pushes; null when it wasn't judged.</summary>
    public bool? OverlapAgrees { get; private set; }

    /// <summary>What was damaged on arrival.</summary>
    public string? Damage { get; private set; }

    /// <summary>Whether it may be handled and played; null until somebody looked.</summary>
    public Fitness? Fitness { get; private set; }

    /// <summary>Where the video of its work can be seen; null when nobody said.</summary>
    public string? VideoLink { get; private set; }

    /// <summary>When that video begins; null when nobody said.</summary>
    public DateTimeOffset? VideoFrom { get; private set; }

    /// <summary>True when the reed lies here, announced or not.</summary>
    public bool IsHere => Presence is Presence.Here or Presence.Extra;

    /// <summary>True when the reed lies here and somebody said that it is fit.</summary>
    public bool MayBePlayed => IsHere && Fitness == Intake.Fitness.Fit;

    /// <summary>True when taking cane away is allowed by its owner.</summary>
    public bool MayBeScraped => Permission != Permission.AdviseOnly;

    /// <summary>What was seen on arrival, in one value.</summary>
    public ReedArrival Arrival => new(Presence, UpperMark, Winding, Overlap, OverlapAgrees, Damage, Fitness);

    /// <summary>A reed that its owner announces.</summary>
    /// <param name="id">Made by the app.</param>
    /// <param name="batch">The batch it comes with.</param>
    /// <param name="number">The number on its tag.</param>
    /// <param name="said">What its owner says of it.</param>
    public static Reed Announced(ReedId id, BatchId batch, int number, AnnouncedReed said)
    {
        ArgumentNullException.ThrowIfNull(said);
        return new Reed
        {
            Id = id,
            Batch = batch,
            Number = number,
            HowToRecognise = said.HowToRecognise,
            Bothers = said.Bothers,
            Permission = said.Permission,
            Scales = said.Scales,
            TiedBy = said.TiedBy,
            MadeHow = said.MadeHow,
            MinutesPlayed = said.MinutesPlayed,
            LastTried = said.LastTried,
            UsedFor = said.UsedFor,
            Likes = said.Likes,
        };
    }

    /// <summary>A reed that was in the parcel without having been announced. Nobody allowed anything, so it is advise only.</summary>
    /// <param name="id">Made by the app.</param>
    /// <param name="batch">The batch it came with.</param>
    /// <param name="number">The next free number.</param>
    /// <param name="howToRecognise">How to tell it from the others.</param>
    internal static Reed Unannounced(ReedId id, BatchId batch, int number, string howToRecognise) => new()
    {
        Id = id,
        Batch = batch,
        Number = number,
        HowToRecognise = howToRecognise,
        Permission = Permission.AdviseOnly,
        Presence = Presence.Extra,
    };

    /// <summary>Notes where the video of its work can be seen, and when it begins.</summary>
    /// <param name="link">An address of the web, or nothing.</param>
    /// <param name="from">When it begins, if that is known.</param>
    /// <returns>What can’t be taken as it is; empty when it was noted.</returns>
    public IReadOnlyList<Problem> Film(string? link, DateTimeOffset? from)
    {
        var problems = WhyNoVideo(link);
        if (problems.Count == 0)
        {
            (VideoLink, VideoFrom) = (PlainText.Tidy(link), from);
        }

        return problems;
    }

    /// <summary>What keeps an address from being that of a video; empty where nothing does, or none was given.</summary>
    /// <param name="link">What was pasted.</param>
    public static IReadOnlyList<Problem> WhyNoVideo(string? link)
    {
        var problems = new List<Problem>();
        if (PlainText.Read(link, nameof(VideoLink), IntakeLimits.VideoLink, problems) is { } read && !IsOfTheWeb(read))
        {
            problems.Add(new Problem(nameof(VideoLink), "Paste the whole address of the video: it begins with https:// or http://."));
        }

        return problems;
    }

    // What is led to by a press mustn’t be a script, a file of this machine or somebody’s password.
    private static bool IsOfTheWeb(string link) =>
        Uri.TryCreate(link, UriKind.Absolute, out var address) && (address.Scheme == Uri.UriSchemeHttps || address.Scheme == Uri.UriSchemeHttp)
        && address.Host.Length > 0 && address.UserInfo.Length == 0 && !link.Any(char.IsWhiteSpace);

    internal void Record(ReedArrival seen)
    {
        var here = seen.Presence is Presence.Here or Presence.Extra;
        Presence = seen.Presence;
        UpperMark = here ? Words(seen.UpperMark) : null;
        Winding = here ? seen.Winding : WindingHand.NotRead;
        Overlap = here ? seen.Overlap : Overlap.NotRead;
        OverlapAgrees = here ? seen.OverlapAgrees : null;
        Damage = here ? Words(seen.Damage) : null;
        Fitness = here ? seen.Fitness : null;
    }

    // A field that was left empty says nothing: it must not count as damage.
    private static string? Words(string? typed) => string.IsNullOrWhiteSpace(typed) ? null : typed.Trim();
}

/// <summary>What its owner says of one reed; only the first three are asked for, the rest may stay null.</summary>
/// <param name="HowToRecognise">How to tell it from the others.</param>
/// <param name="Bothers">What bothers its owner.</param>
/// <param name="Permission">How far the teacher may go.</param>
public sealed record AnnouncedReed(string HowToRecognise, string Bothers, Permission Permission)
{
    /// <summary>What was marked on the two-sided scales.</summary>
    public ReedScales Scales { get; init; } = ReedScales.Nothing;

    /// <summary>Who tied it.</summary>
    public string? TiedBy { get; init; }

    /// <summary>How it came to be.</summary>
    public MadeHow? MadeHow { get; init; }

    /// <summary>How long it has been played, in minutes.</summary>
    public int? MinutesPlayed { get; init; }

    /// <summary>What was tried on it last.</summary>
    public string? LastTried { get; init; }

    /// <summary>What it is for.</summary>
    public ReedUse? UsedFor { get; init; }

    /// <summary>What its owner likes about it.</summary>
    public string? Likes { get; init; }

    /// <summary>Questions about this reed.</summary>
    public IReadOnlyList<string> Questions { get; init; } = [];

    /// <summary>Questions that stand in what its owner wrote of it, such as “Why does it do that?”, and weren’t asked by themselves.</summary>
    internal IEnumerable<string> AskedInPassing => new[] { Bothers, LastTried, Likes }.SelectMany(AskedQuestions.In).Distinct().Except(Questions);
}
