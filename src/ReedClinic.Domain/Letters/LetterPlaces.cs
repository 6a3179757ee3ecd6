using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Letters;

/// <summary>Places on a reed as a letter says them, without words that only a reed-maker knows.</summary>
internal static class LetterPlaces
{
    /// <summary>A place, to stand inside a sentence: “the corners of the tip on the upper blade”.</summary>
    /// <param name="place">The place.</param>
    public static string Name(Place place) => Name(place.Zone) + On(place, " ");

    /// <summary>Blade and side where they are said: “on the upper blade, on the left”; empty where they aren't.</summary>
    /// <param name="place">The place.</param>
    /// <param name="before">What stands before it.</param>
    public static string On(Place place, string before = "")
    {
        var blade = place.Blades switch { Blades.Upper => "on the upper blade", Blades.Lower => "on the lower blade", _ => null };
        var side = place.Sides switch { Sides.Left => "on the left", Sides.Right => "on the right", _ => null };
        return (blade, side) switch
        {
            (null, null) => "",
            (null, _) => before + side,
            (_, null) => before + blade,
            _ => $"{before}{blade}, {side}",
        };
    }

    /// <summary>A part of the reed.</summary>
    /// <param name="zone">The part.</param>
    public static string Name(Zone zone) => zone switch
    {
        Zone.WholeReed => "the reed as a whole",
        Zone.TipCorners => "the corners of the tip",
        Zone.TipSides => "the sides of the tip",
        Zone.TipCentre => "the middle of the tip",
        Zone.Rooftop => "the line where the heart ends and the tip begins",
        Zone.Transition => "the slope from heart to tip",
        Zone.HeartCentre => "the middle of the heart",
        Zone.HeartBottom => "the lower end of the heart",
        Zone.WindowBase => "the lower end of the windows",
        Zone.Eye => "the narrow end of the staple",
        _ => "the " + zone.Name(),
    };
}
