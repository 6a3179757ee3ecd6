using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>A place that is named, wholly or in part.</summary>
internal sealed record Mention
{
    /// <summary>The part of the reed, if it is named.</summary>
    internal Zone? Zone { get; init; }

    /// <summary><c>tip</c>, <c>heart</c>, <c>back</c> or <c>lay</c>, when no part of it is named.</summary>
    internal string? Region { get; init; }

    /// <summary><c>centre</c>, <c>side</c>, <c>bottom</c> or <c>face</c>, when it isn't said of what.</summary>
    internal string? Part { get; init; }

    /// <summary>Upper, Lower, Both or Other.</summary>
    internal string? Blade { get; init; }

    /// <summary>Left, Right, Both or Other.</summary>
    internal string? Side { get; init; }

    internal int First { get; init; }

    internal int End { get; init; }

    internal bool HasPlace => Zone is not null || Region is not null;

    internal Blades? OneBlade => Blade switch
    {
        "Upper" => Blades.Upper,
        "Lower" => Blades.Lower,
        _ => null,
    };

    internal Sides? OneSide => Side switch
    {
        "Left" => Sides.Left,
        "Right" => Sides.Right,
        _ => null,
    };

    /// <summary>The part of the reed that is meant when a region is named without a part of it.</summary>
    internal Zone? Usual => Zone ?? Region switch
    {
        "tip" => Reeds.Zone.TipSides,
        "heart" => OneSide is null ? Reeds.Zone.HeartCentre : Reeds.Zone.HeartSides,
        "back" => Reeds.Zone.Windows,
        "lay" => Reeds.Zone.WindowBase,
        _ => null,
    };
}
