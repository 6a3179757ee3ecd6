using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Reeds;

public sealed class ReedWordsTests
{
    [Fact]
    public void Every_zone_has_a_name_of_its_own() =>
        Assert.Equal(Enum.GetValues<Zone>().Length, Enum.GetValues<Zone>().Select(z => z.Name()).Distinct().Count());

    [Fact]
    public void A_place_is_said_zone_first() =>
        Assert.Equal("tip sides, upper blade, left", new Place(Zone.TipSides, Blades.Upper, Sides.Left).Say());

    [Fact]
    public void What_was_not_said_is_not_spelled_out() => Assert.Equal("spine", new Place(Zone.Spine).Say());
}
