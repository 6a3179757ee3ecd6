using System.Globalization;

namespace ReedClinic.Browser.Tests.Load;

/// <summary>Times of one kind, in milliseconds.</summary>
internal sealed class LoadFigures
{
    private readonly List<double> _times = [];

    /// <summary>How many there are.</summary>
    public int Count => _times.Count;

    /// <summary>The time that 95 in a hundred don't go above.</summary>
    public double Most => At(0.95);

    /// <summary>Adds one.</summary>
    /// <param name="time">Milliseconds.</param>
    public void Add(double time) => _times.Add(time);

    /// <summary>As cells of a table: how many, the one in the middle, the 95th percentile, and the longest.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Count} | {At(0.5):0} | {Most:0} | {At(1):0}");

    // By the nearest rank.
    private double At(double share) => _times.Count == 0 ? double.NaN : _times.Order().ElementAt(Math.Max(0, (int)Math.Ceiling(share * _times.Count) - 1));
}
