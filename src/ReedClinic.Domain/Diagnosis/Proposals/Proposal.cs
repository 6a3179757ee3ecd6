using System.Globalization;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Diagnosis.Proposals;

/// <summary>What sort of thing is proposed; the earlier come first. A reed that is refused for good is retired before anything is stopped.</summary>
public enum ProposalKind
{
    /// <summary>Look at something or try it: nothing is done to the reed.</summary>
    Look,

    /// <summary>Something that is undone, wholly or in part: no cane goes.</summary>
    Undoable,

    /// <summary>Cane goes, and can’t be put back.</summary>
    Cane,

    /// <summary>Leave it as it is.</summary>
    Stop,

    /// <summary>The work on this reed ends for good.</summary>
    Retire,
}

/// <summary>A number that a proposal rests on, with how it is known.</summary>
/// <param name="What">What it is a number of, with the number, in plain words.</param>
/// <param name="Mark">How it is known.</param>
public sealed record KnownNumber(string What, EvidenceMark Mark)
{
    /// <summary>How it is known, in words for a reader. What has no source is usual teaching, never a fact with a citation.</summary>
    public string Footing => Mark switch
    {
        { Evidence: Evidence.Published } => Mark.Source ?? "published",
        { Evidence: Evidence.FromMemory } => "from memory of the trade’s books",
        { Evidence: Evidence.Calculated } => Mark.Source is { } how ? $"worked out: {how}" : "worked out",
        { Evidence: Evidence.OnRecord } => Mark.Source is { } where ? $"on record: {where}" : "on record",
        _ => Mark.Source is { } about ? $"usual teaching: {about}" : "usual teaching",
    };

    internal static string Say(FormattableString words) => words.ToString(CultureInfo.InvariantCulture);
}

/// <summary>A proposal in words.</summary>
/// <param name="Do">What to do.</param>
/// <param name="HowLittle">How little of it, and that it is tried again after.</param>
/// <param name="Expect">What to expect.</param>
/// <param name="MayCost">What it may cost.</param>
/// <param name="NotTouch">What must not be touched, one sentence each.</param>
public sealed record ProposalWords(string Do, string HowLittle, string Expect, string MayCost, IReadOnlyList<string> NotTouch)
{
    /// <summary>All of it, in its order.</summary>
    public IEnumerable<string> All => new[] { Do, HowLittle, Expect, MayCost }.Concat(NotTouch).Where(words => words.Length > 0);
}

/// <summary>One thing that can be done next.</summary>
/// <param name="Kind">What sort.</param>
/// <param name="Adjustment">The adjustment; null for a look and for stopping.</param>
/// <param name="Test">The test, for a look.</param>
/// <param name="Place">Where the work is done; null for a look and for stopping.</param>
/// <param name="ForTheSakeOf">The part that becomes thick by comparison, where it is done for that.</param>
/// <param name="Value">What it is worth: gain less harm. It orders proposals and is no chance.</param>
/// <param name="Gain">What is hoped for.</param>
/// <param name="Harm">What is feared: side effects, risk, and that cane is gone.</param>
/// <param name="Words">The same in words.</param>
/// <param name="Numbers">Every number it rests on.</param>
public sealed record Proposal(
    ProposalKind Kind,
    AdjustmentKindId? Adjustment,
    TestCardId? Test,
    Place? Place,
    Zone? ForTheSakeOf,
    double Value,
    double Gain,
    double Harm,
    ProposalWords Words,
    IReadOnlyList<KnownNumber> Numbers)
{
    /// <summary>The published texts behind its numbers, each once.</summary>
    public IReadOnlyList<string> Sources =>
        [.. Numbers.Where(number => number.Mark.Evidence == Evidence.Published).Select(number => number.Mark.Source).OfType<string>().Distinct()];
}

/// <summary>Something that isn’t proposed, and why.</summary>
/// <param name="Adjustment">The adjustment.</param>
/// <param name="Reason">Why, in a plain sentence.</param>
/// <param name="Mark">How that is known.</param>
public sealed record HeldBack(AdjustmentKindId Adjustment, string Reason, EvidenceMark Mark);

/// <summary>What can be done next, the best first. Stopping is always among it, and whatever is worth less than stopping is left out.</summary>
/// <param name="Proposals">The proposals, in the order in which they should be taken.</param>
/// <param name="HeldBack">What speaks for itself by the causes and is held back all the same.</param>
/// <param name="Remarks">Plain sentences: what should be known before, and how far all this can be relied on.</param>
public sealed record NextSteps(IReadOnlyList<Proposal> Proposals, IReadOnlyList<HeldBack> HeldBack, IReadOnlyList<string> Remarks)
{
    /// <summary>What to do first.</summary>
    public Proposal First => Proposals[0];

    /// <summary>The first thing that is done to the reed, looks left aside; null when that is to stop.</summary>
    public Proposal? FirstDeed => Proposals.FirstOrDefault(one => one.Kind != ProposalKind.Look) is { Kind: not ProposalKind.Stop } deed ? deed : null;
}
