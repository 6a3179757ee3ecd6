using ReedClinic.Domain.Catalogues;

namespace ReedClinic.Domain.Diagnosis.Proposals;

/// <summary>Where a reed stands on each of the six scales now: how far off what is right, and on which side. All of it is common practice.</summary>
internal sealed class ScaleStands
{
    private const double Furthest = 2;

    private static readonly (EffectScale Scale, double Way, string[] Signs)[] Tells =
    [
        (EffectScale.Pitch, 1, ["crow-high", "whole-sharp"]),
        (EffectScale.Pitch, -1, ["crow-low", "whole-flat"]),
        (EffectScale.Opening, 1, ["opening-wide"]),
        (EffectScale.Opening, -1, ["opening-narrow"]),
        (EffectScale.Effort, 1, ["feels-hard", "needs-biting", "tires-lip"]),
        (EffectScale.Effort, -1, ["feels-easy", "no-cushion", "tires-holding", "soft-gets-away"]),
        (EffectScale.Response, -1, ["starts-late", "soft-fails", "low-late", "low-refuse", "tongue-thuds", "tongue-unsure", "starts-fuzzy", "starts-mushy"]),
        (EffectScale.Response, 1, ["starts-burst", "tongue-splats"]),
        (EffectScale.Tone, -1, ["sounds-bright", "sounds-thin", "sounds-shrill", "sounds-hollow"]),
        (EffectScale.Tone, 1, ["sounds-dull", "sounds-stuffy", "sounds-dead"]),
        (EffectScale.Steadiness, -1, ["swell-wild", "swell-breaks", "tuner-swings", "high-drops", "high-wanders", "hold-droops", "whistles", "flutters"]),
    ];

    private readonly Dictionary<EffectScale, double> off = [];
    private readonly HashSet<EffectScale> known = [];

    internal ScaleStands(ReedNow now)
    {
        foreach (var scale in Enum.GetValues<EffectScale>())
        {
            var own = Tells.Where(tell => tell.Scale == scale).ToList();
            off[scale] = Math.Clamp(own.Sum(tell => tell.Way * Weight(now, tell.Signs)), -Furthest, Furthest);
            if (own.Exists(tell => now.Looked(tell.Signs)))
            {
                known.Add(scale);
            }
        }

        if (now.Crow is { } crow)
        {
            off[EffectScale.Pitch] = Math.Clamp(crow.Middle.Value / EffectEstimate.CentsAStep, -Furthest, Furthest);
            known.Add(EffectScale.Pitch);
        }
    }

    /// <summary>How far off: 0 is right, and taken where nothing is known.</summary>
    internal double Off(EffectScale scale) => off[scale];

    /// <summary>Whether it was tried.</summary>
    internal bool IsKnown(EffectScale scale) => known.Contains(scale);

    /// <summary>The share of what was tried that is right, from 0 to 1; 0 where nothing was.</summary>
    internal double Right => known.Count == 0 ? 0 : known.Count(scale => Math.Abs(off[scale]) < 0.5) / (double)known.Count;

    /// <summary>How bad it is to be so far off. Notes that start sooner and a steadier reed are no fault of themselves, until they are too much.</summary>
    internal static double Loss(EffectScale scale, double off) => scale switch
    {
        EffectScale.Response => off < 0 ? -off : Math.Max(0, off - 1) / 2,
        EffectScale.Steadiness => Math.Max(0, -off),
        _ => Math.Abs(off),
    };

    /// <summary>Each sure sign is a step and each suspicion half of one; together two at most.</summary>
    private static double Weight(ReedNow now, string[] signs) =>
        Math.Min(Furthest, now.Causes.Counted.Where(one => one.Present && signs.Contains(one.Sign.Value)).Sum(one => one.Sure ? 1.0 : 0.5));
}
