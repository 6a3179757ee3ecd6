using CsCheck;
using ReedClinic.Domain.People;

namespace ReedClinic.Domain.Tests.People;

public sealed class FoldingTests
{
    [Theory]
    [InlineData("  Zoë   ÅNGSTRÖM ", "zoe angstrom")]
    [InlineData("Łucja Žižka", "lucja zizka")]
    [InlineData("Strauß", "strauss")]
    [InlineData("Søren Æbelø", "soren aebelo")]
    [InlineData("İpek IŞIK", "ipek isik")]
    [InlineData("ΟΔΥΣΣΕΎΣ Άννα", "οδυσσευσ αννα")]
    [InlineData("Ольга ЁЛКИНА", "ольга елкина")]
    [InlineData("e\u0301", "e")]
    [InlineData("王小明", "王小明")]
    [InlineData("", "")]
    public void A_name_is_found_without_its_capitals_and_diacritics(string written, string folded) =>
        Assert.Equal(folded, Folding.Of(written));

    [Fact]
    public void Folding_twice_is_folding_once() =>
        Gen.String.Sample(text => Folding.Of(Folding.Of(text)) == Folding.Of(text));

    [Theory]
    [InlineData(" Mara@Harbour.Example ", "mara@harbour.example")]
    [InlineData("Zoë@example.org", "zoë@example.org")]
    public void An_address_is_compared_in_small_letters_with_its_diacritics(string written, string folded) =>
        Assert.Equal(folded, Folding.OfEmail(written));
}
