namespace ReedClinic.Domain.Reeds;

/// <summary>The trade's words for places on a reed, spelled one way everywhere.</summary>
public static class ReedWords
{
    /// <summary>The plain name of a zone, in lower case.</summary>
    /// <param name="zone">The zone.</param>
    /// <returns>For example <c>tip sides</c>.</returns>
    public static string Name(this Zone zone) => zone switch
    {
        Zone.WholeReed => "whole reed",
        Zone.TipEdge => "edge of the tip",
        Zone.TipCorners => "tip corners",
        Zone.TipSides => "tip sides",
        Zone.TipCentre => "centre of the tip",
        Zone.Rooftop => "rooftop",
        Zone.Transition => "transition",
        Zone.HeartCentre => "centre of the heart",
        Zone.HeartSides => "sides of the heart",
        Zone.HeartBottom => "bottom of the heart",
        Zone.Windows => "windows",
        Zone.WindowBase => "base of the windows",
        Zone.Spine => "spine",
        Zone.Rails => "rails",
        Zone.Bark => "bark",
        Zone.SideEdges => "side edges",
        Zone.Opening => "opening",
        Zone.Inside => "inside",
        Zone.Wire => "wire",
        Zone.Thread => "thread",
        Zone.Eye => "eye of the staple",
        Zone.Cork => "cork",
        _ => throw new ArgumentOutOfRangeException(nameof(zone)),
    };

    /// <summary>A place in words: the zone, then blade and side where they are said.</summary>
    /// <param name="place">The place.</param>
    /// <returns>For example <c>tip sides, upper blade, left</c>.</returns>
    public static string Say(this Place place) => place.Zone.Name() + On(place);

    /// <summary>The same for whoever reads a letter, without words that only a reed-maker knows.</summary>
    /// <param name="place">The place.</param>
    /// <returns>For example <c>slope from heart to tip, upper blade</c>.</returns>
    public static string SayPlainly(this Place place) => place.Zone.NamePlainly() + On(place);

    /// <summary>The name of a zone in a letter: one for each, in its sentences and on its drawings.</summary>
    /// <param name="zone">The zone.</param>
    /// <returns>For example <c>corners of the tip</c>, to stand after “the”.</returns>
    public static string NamePlainly(this Zone zone) => zone switch
    {
        Zone.TipCorners => "corners of the tip",
        Zone.TipSides => "sides of the tip",
        Zone.TipCentre => "middle of the tip",
        Zone.Rooftop => "line between heart and tip",
        Zone.Transition => "slope from heart to tip",
        Zone.HeartCentre => "middle of the heart",
        Zone.HeartBottom => "lower end of the heart",
        Zone.WindowBase => "lower end of the windows",
        Zone.Eye => "narrow end of the staple",
        _ => zone.Name(),
    };

    private static string On(Place place)
    {
        var blade = place.Blades switch
        {
            Blades.Upper => ", upper blade",
            Blades.Lower => ", lower blade",
            _ => "",
        };
        var side = place.Sides switch
        {
            Sides.Left => ", left",
            Sides.Right => ", right",
            _ => "",
        };
        return blade + side;
    }
}
