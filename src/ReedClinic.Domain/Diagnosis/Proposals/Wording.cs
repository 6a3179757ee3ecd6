using ReedClinic.Domain.Bench.Advice;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Diagnosis.Proposals;

/// <summary>Says a proposal in plain words, and names every number in it.</summary>
internal sealed class Wording(ReedNow now, ScaleStands stands)
{
    private static readonly EvidenceMark Weights = new(Evidence.OwnDefault, "what gain, side effects, risk and lost cane weigh against each other in this ranking");

    private static readonly EvidenceMark Chances =
        new(Evidence.Calculated, "from how often causes are met and how strongly they show themselves, which are this program’s own defaults");

    internal Proposal Of(Weighed weighed, ProposalKind kind)
    {
        var entry = weighed.Entry;
        var place = PlaceOf(entry);
        var part = Proportion.PartFor(now, entry.Id);
        var words = new ProposalWords(Do(entry, place, part), HowLittle(entry, place), Expect(weighed, part), MayCost(weighed), [.. NotTouch(part)]);
        return new Proposal(kind, entry.Id, null, place, part, weighed.Value, weighed.Gain, weighed.Harm, words, [.. Numbers(weighed)]);
    }

    internal Proposal Stop(double value, LikelyCause? left)
    {
        var words = new ProposalWords(
            "Stop here.", "Nothing more is done to it.", stands.Right > 0 ? "What is right stays right." : "It stays as it is.",
            left is null ? "Nothing that is known of is left undone." : $"What may still be the matter stays: {left.Cause.Name}.", [.. Bars.Kept(now)]);
        List<KnownNumber> numbers = [new("what it is worth to leave the reed as it is", Weights)];
        if (left is not null)
        {
            numbers.Add(ChanceOf(left));
        }

        return new Proposal(ProposalKind.Stop, null, null, null, null, value, value, 0, words, numbers);
    }

    private Place PlaceOf(AdjustmentEntry entry) => entry.Id.Value == "even-up"
        ? now.ThickParts.Select(thick => (Place?)thick.Place).FirstOrDefault() ?? new Place(entry.Zone)
        : new Place(entry.Zone);

    private static string Do(AdjustmentEntry entry, Place place, Zone? part)
    {
        var where = place.Blades != Blades.Both || place.Sides != Sides.Both ? $": {place.Say()}" : string.Empty;
        var why = part is { } thin ? $", so that the {thin.Name()} becomes thick by comparison" : string.Empty;
        return $"{char.ToUpperInvariant(entry.Name[0])}{entry.Name[1..]}{where}{why}.";
    }

    private static string HowLittle(AdjustmentEntry entry, Place place)
    {
        var amount = entry.Amount is { } usual ? $"{char.ToUpperInvariant(usual[0])}{usual[1..]} at most" : "As little as can be";
        var where = !Bars.TakesCane(entry) ? string.Empty
            : entry.Id.Value == "even-up" || place.Blades != Blades.Both || place.Sides != Sides.Both ? ", from the thick part only"
            : WorkKinds.IsClip(entry.Id) ? ", both blades at once"
            : ", the same on both sides of both blades";
        return entry.Id.Value == "retire" ? "Nothing more is done to it."
            : Bars.IsLook(entry) ? "Nothing is done to the reed."
            : $"{amount}{where}; then try it again.";
    }

    private static string Expect(Weighed weighed, Zone? part)
    {
        var moves = weighed.Moves.Where(move => move.Help > 0).OrderByDescending(move => move.Help).Select(Say).Take(3).ToList();
        var effect = moves.Count > 0 ? $"Expect: {string.Join("; ", moves)}." : "No change is promised on any scale.";
        var against = weighed.For.Count > 0 ? $"It is tried against: {string.Join(", or ", weighed.For.Take(2).Select(one => one.Cause.Name))}. " : string.Empty;
        return against + effect + (part is null ? string.Empty : " The part itself gets no thicker: this helps within limits.");
    }

    private static string MayCost(Weighed weighed)
    {
        var moves = weighed.Moves.Where(move => move.Harm > 0).OrderByDescending(move => move.Harm).Select(Say).Take(3).ToList();
        var effect = moves.Count > 0 ? $"It may cost: {string.Join("; ", moves)}. " : string.Empty;
        var gone = Bars.TakesCane(weighed.Entry) ? " Cane can’t be put back." : string.Empty;
        var risk = weighed.Entry.Risk.Value == 0 ? " No risk to the reed." : KnownNumber.Say($" Risk {weighed.Entry.Risk.Value} of 5.");
        return $"{effect}{Typeset(weighed.Entry.Caution)}{gone}{risk}";
    }

    private IEnumerable<string> NotTouch(Zone? part) =>
        part is { } thin ? [$"Never the {thin.Name()} itself.", .. Bars.Kept(now)] : Bars.Kept(now);

    /// <summary>One effect, with the way it goes and how far.</summary>
    private static string Say(Moved move)
    {
        var (less, more) = move.Scale switch
        {
            EffectScale.Pitch => ("lower pitch", "higher pitch"),
            EffectScale.Opening => ("a smaller opening", "a wider opening"),
            EffectScale.Effort => ("easier to blow", "harder to blow"),
            EffectScale.Response => ("later starts", "sooner starts"),
            EffectScale.Tone => ("a brighter sound", "a darker, rounder sound"),
            _ => ("less steady", "steadier"),
        };
        var estimate = move.Estimate;
        var middle = estimate.Likely != 0 ? estimate.Likely : estimate.Low + estimate.High;
        var direction = estimate.IsTwoSigned ? $"{less} or {more}, it may go either way" : middle < 0 ? less : more;
        var size = estimate.IsTwoSigned ? string.Empty : Math.Abs(middle) >= 1.5 ? ", by a good deal" : Math.Abs(middle) < 0.75 ? ", a little" : string.Empty;
        var here = move.Estimate.Passes is { } passes
            ? KnownNumber.Say($" (about {Shown(move):0.#;−0.#;0}{Unit(move)} a pass here, from {passes} passes)") : string.Empty;
        return $"{direction}{size}{here}";
    }

    private static string Typeset(string words) => words.Replace('\'', '’');

    private static string Range(EffectEstimate estimate) => estimate.Low.Equals(estimate.High)
        ? KnownNumber.Say($"{estimate.Low:+0.#;−0.#;0}")
        : KnownNumber.Say($"{estimate.Low:+0.#;−0.#;0} to {estimate.High:+0.#;−0.#;0}");

    private static double Shown(Moved move) => move.Estimate.Likely * (move.Scale == EffectScale.Pitch ? EffectEstimate.CentsAStep : 1);

    private static string Unit(Moved move) => move.Scale == EffectScale.Pitch ? " cents" : " steps";

    private IEnumerable<KnownNumber> Numbers(Weighed weighed)
    {
        var entry = weighed.Entry;
        if (entry.Amount is { } amount)
        {
            yield return new KnownNumber($"how much: {amount}", EvidenceMark.CommonPractice);
        }

        foreach (var move in weighed.Moves.Where(move => move.Estimate.Low != 0 || move.Estimate.High != 0))
        {
            var here = move.Estimate.Passes is { } passes ? KnownNumber.Say($", about {Shown(move):0.#;−0.#;0}{Unit(move)}, from {passes} passes here") : string.Empty;
            yield return new KnownNumber(
                KnownNumber.Say($"{move.Scale.ToString().ToLowerInvariant()}: {Range(move.Estimate)} of 2 steps{here}"), move.Estimate.Mark);
        }

        yield return new KnownNumber(KnownNumber.Say($"risk: {entry.Risk.Value} of 5"), entry.Risk.Mark);
        yield return new KnownNumber(Typeset(entry.Caution), entry.Mark);
        foreach (var one in weighed.For.Take(2))
        {
            yield return ChanceOf(one);
        }

        foreach (var one in weighed.For.Take(1))
        {
            yield return new KnownNumber($"which step it is against “{one.Cause.Name}”", one.Cause.StepsMark);
        }

        if (WorkKinds.IsClip(entry.Id) && now is { Length: { } left, Floor: { } floor })
        {
            yield return new KnownNumber(KnownNumber.Say($"length left: {left.Millimetres:0.0} mm"), new EvidenceMark(Evidence.OnRecord, "this reed’s log"));
            yield return new KnownNumber(KnownNumber.Say($"as short as it should get: {floor.Millimetres:0.#} mm"), floor.Mark);
        }

        yield return new KnownNumber("gain and harm", Weights);
    }

    private static KnownNumber ChanceOf(LikelyCause one) => new(KnownNumber.Say($"how likely “{one.Cause.Name}” is: {one.Chance:0.00}"), Chances);
}
