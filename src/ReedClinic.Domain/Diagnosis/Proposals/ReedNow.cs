using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Diagnosis.Proposals;

/// <summary>Whose hand would do the work.</summary>
public enum Hand
{
    /// <summary>Somebody at the bench, who knows how.</summary>
    Bench,

    /// <summary>The student, at home.</summary>
    Student,

    /// <summary>A younger student, at home.</summary>
    YoungerStudent,
}

/// <summary>What comes before any cane: each true once it was looked at. What was found then is among the signs.</summary>
/// <param name="Wet">Whether the reed is wet enough.</param>
/// <param name="Sealed">Whether it leaks.</param>
/// <param name="Instrument">Whether the instrument is to blame: another one was played.</param>
/// <param name="Player">Whether the player is: another one played.</param>
public readonly record struct FirstChecks(bool Wet, bool Sealed, bool Instrument, bool Player)
{
    /// <summary>All of them.</summary>
    public static FirstChecks All { get; } = new(true, true, true, true);

    /// <summary>What either of two tells.</summary>
    /// <param name="other">The other.</param>
    public FirstChecks And(FirstChecks other) =>
        new(Wet || other.Wet, Sealed || other.Sealed, Instrument || other.Instrument, Player || other.Player);
}

/// <summary>A place that is to be left alone.</summary>
/// <param name="Place">Where.</param>
/// <param name="Why">Why, in the words it was marked with.</param>
public readonly record struct KeptPlace(Place Place, string Why);

/// <summary>Work that was done at this bench and stands.</summary>
/// <param name="Kind">What.</param>
/// <param name="Place">Where.</param>
/// <param name="Pass">In which pass.</param>
public readonly record struct WorkDone(AdjustmentKindId Kind, Place Place, int Pass);

/// <summary>What two measurements need to be alike in before they are compared; each null when not known.</summary>
/// <param name="WetMinutes">How long it lay in water.</param>
/// <param name="AltitudeMetres">How high above the sea.</param>
/// <param name="RoomCelsius">How warm the room is.</param>
public readonly record struct Circumstances(int? WetMinutes, int? AltitudeMetres, double? RoomCelsius);

/// <summary>A finding of uneven parts: where the thick part is.</summary>
/// <param name="Sign">The sign.</param>
/// <param name="Place">The thick part.</param>
public readonly record struct ThickPart(SignId Sign, Place Place);

/// <summary>What is known of one reed as it stands now, for choosing what to do next. Everything but the causes may be left unsaid.</summary>
/// <param name="Catalogue">The catalogue, with the studio’s own changes.</param>
/// <param name="Causes">What is likely behind what was seen.</param>
public sealed record ReedNow(Catalogue Catalogue, LikelyCauses Causes)
{
    /// <summary>How far its owner lets the teacher go.</summary>
    public Permission Permission { get; init; } = Permission.TakeRisks;

    /// <summary>True when more was agreed since, by the log.</summary>
    public bool AgreedSince { get; init; }

    /// <summary>Whether it lies here.</summary>
    public bool IsHere { get; init; } = true;

    /// <summary>Whether it may be handled and played; null when nobody looked.</summary>
    public Fitness? Fitness { get; init; }

    /// <summary>Places that are to be left alone.</summary>
    public IReadOnlyList<KeptPlace> LeftAlone { get; init; } = [];

    /// <summary>Its length; null when it wasn’t measured.</summary>
    public LengthLeft? Length { get; init; }

    /// <summary>How short it may get; null where nothing is known.</summary>
    public LengthFloor? Floor { get; init; }

    /// <summary>The latest crow against what is aimed at; null when none was heard.</summary>
    public CentsRange? Crow { get; init; }

    /// <summary>What was done to it here.</summary>
    public IReadOnlyList<WorkDone> Work { get; init; } = [];

    /// <summary>True when cane was taken and nothing was tried since.</summary>
    public bool Untested { get; init; }

    /// <summary>True when the blades lean against the winding.</summary>
    public bool AgainstWinding { get; init; }

    /// <summary>What was looked at before.</summary>
    public FirstChecks Checks { get; init; }

    /// <summary>A part that is to become thick by comparison with what stands around it.</summary>
    public Zone? ByComparison { get; init; }

    /// <summary>Where an unevenness is thick.</summary>
    public IReadOnlyList<ThickPart> ThickParts { get; init; } = [];

    /// <summary>How long it has been played; null when not known.</summary>
    public int? MinutesPlayed { get; init; }

    /// <summary>How it was wetted, and where it is played.</summary>
    public Circumstances Circumstances { get; init; }

    /// <summary>How it is scraped; the long scrape where nobody said.</summary>
    public ScrapeStyle? Scrape { get; init; }

    /// <summary>What it is for; an oboe where nobody said.</summary>
    public Instrument? Instrument { get; init; }

    /// <summary>Whose hand would do the work.</summary>
    public Hand Hand { get; init; }

    /// <summary>True when guardian and teacher have both said that a younger student may use a knife.</summary>
    public bool KnifeAgreed { get; init; }

    /// <summary>True when it goes back by post after the work: what takes days is for its player to do.</summary>
    public bool ByPost { get; init; }

    /// <summary>What adjustments do.</summary>
    public AdjustmentEffects Effects { get; init; } = AdjustmentEffects.Usual;

    internal bool Has(string sign) => Causes.Counted.Any(one => one.Present && one.Sign.Value == sign);

    internal bool HasSurely(string sign) => Causes.Counted.Any(one => one.Present && one.Sure && one.Sign.Value == sign);

    internal bool Looked(params string[] signs) => Causes.Counted.Any(one => signs.Contains(one.Sign.Value));

    internal IReadOnlySet<SignId> Holding => Causes.Counted.Where(one => one.Present).Select(one => one.Sign).ToHashSet();

    internal int PassesOf(AdjustmentKindId kind) => Work.Where(done => done.Kind == kind).Select(done => done.Pass).Distinct().Count();

    internal int Passes => Work.Where(done => !done.Kind.Prepares || done.Pass > 0).Select(done => done.Pass).Distinct().Count();

    /// <summary>Room for a clip of the usual size; true where the length or its floor isn’t known.</summary>
    internal bool RoomFor(decimal clip) => Length is not { } left || Floor is not { } floor || left.Millimetres - clip >= floor.Millimetres;

    internal bool CrowIsHigh => Crow is { } crow ? crow.Middle.Value > CrowTarget.ToleranceCents : Has("crow-high");

    internal bool CrowIsLow => Crow is { } crow ? crow.Middle.Value < -CrowTarget.ToleranceCents : Has("crow-low");
}
