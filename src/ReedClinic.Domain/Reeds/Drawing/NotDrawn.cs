namespace ReedClinic.Domain.Reeds.Drawing;

/// <summary>What a drawing doesn't have, and where it would be: a place that is recorded and has no shape is told in a sentence.</summary>
public static class NotDrawn
{
    private const string ShortScrape = "The drawing of a short scrape has no ";

    /// <summary>The sentence for a place that this drawing doesn't have.</summary>
    /// <param name="place">The place.</param>
    /// <param name="style">How the reed is scraped.</param>
    /// <param name="instrument">What it is for; an oboe when nobody said.</param>
    /// <returns>A whole sentence with its full stop; null where the place is drawn.</returns>
    public static string? Of(Place place, ScrapeStyle style, Instrument? instrument = null) =>
        IsDrawn(place, style, instrument) ? null : place.Zone switch
        {
            Zone.Windows => ShortScrape + "windows: they would lie behind the heart, left and right of the middle, where bark is drawn.",
            Zone.WindowBase => ShortScrape + "windows: their lower end would lie in the bark, towards the thread.",
            Zone.Spine => ShortScrape + "spine: it would run down the middle behind the heart, where bark is drawn.",
            Zone.Rails => ShortScrape + "rails: they would run down both edges behind the heart, where bark is drawn.",
            Zone.Cork => "The drawing of this staple has no cork: it would be round the foot, below the thread.",
            _ => throw new ArgumentOutOfRangeException(nameof(place)),
        };

    private static bool IsDrawn(Place place, ScrapeStyle style, Instrument? instrument) =>
        place.Zone == Zone.WholeReed || MapLayout.IsEnd(place.Zone) || BladeArt.For(style, instrument).Shapes(place.Zone, place.Sides).Count > 0;
}
