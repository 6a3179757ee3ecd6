using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Tests.Catalogues;

public sealed class CatalogueChangeTests
{
    private static readonly EvidenceMark Own = EvidenceMark.CommonPractice;

    [Fact]
    public void A_renamed_entry_keeps_its_id_and_the_shipped_catalogue_stays_as_it_is()
    {
        var changed = Done(new CatalogueChange.Rename(CatalogueTable.Causes, "bumps", " ridges left by the knife "));

        Assert.Equal("ridges left by the knife", changed.Find(new CauseId("bumps"))!.Name);
        Assert.Equal("bumps in the scrape", Catalogue.Shipped.Find(new CauseId("bumps"))!.Name);
    }

    [Fact]
    public void A_retired_entry_is_no_longer_offered_and_is_still_found()
    {
        var changed = Done(
            new CatalogueChange.Retire(CatalogueTable.Causes, "wire-wrong"), new CatalogueChange.Retire(CatalogueTable.Signs, "wire-loose"),
            new CatalogueChange.Retire(CatalogueTable.Adjustments, "add-wire"), new CatalogueChange.Retire(CatalogueTable.Tests, "turned-over"));

        Assert.DoesNotContain(changed.Causes, cause => cause.Id.Value == "wire-wrong");
        Assert.DoesNotContain(changed.Signs, sign => sign.Id.Value == "wire-loose");
        Assert.True(changed.Find(new CauseId("wire-wrong"))!.Retired && changed.Find(new SignId("wire-loose"))!.Retired);
        Assert.True(changed.Find(new AdjustmentKindId("add-wire"))!.Retired && changed.Find(new TestCardId("turned-over"))!.Retired);
    }

    [Fact]
    public void A_studio_adds_a_cause_with_a_sign_of_its_own()
    {
        var sign = new Sign(new SignId("sounds-of-bees"), "it hums like bees", new TestCardId("crow-texture"), [], null, new Marked<double>(0.01, Own));
        var changed = Done(new CatalogueChange.AddSign(sign, []), new CatalogueChange.AddCause(Bees, [Link(sign.Id)]));

        Assert.Contains(Bees, changed.Causes);
        Assert.Equal(sign.Id, Assert.Single(changed.LinksOf(Bees.Id)).Sign);
    }

    [Fact]
    public void What_can_not_be_laid_over_is_refused_in_a_plain_sentence_and_nothing_is_changed()
    {
        Refused("already", new CatalogueChange.AddCause(Bees with { Id = new CauseId("bumps") }, []));
        Refused("shows itself in no sign", new CatalogueChange.AddCause(Bees, []));
        Refused("There is no “sounds-of-bees”", new CatalogueChange.AddCause(Bees, [Link(new SignId("sounds-of-bees"))]));
        Refused("There is no entry", new CatalogueChange.Rename(CatalogueTable.Signs, "no-such-sign", "x"));
        Refused("There is no entry", new CatalogueChange.Retire(CatalogueTable.Tests, "no-such-test"));
        Refused("Give it a name", new CatalogueChange.Rename(CatalogueTable.Signs, "hisses", "  "));
        Refused("another entry called", new CatalogueChange.Rename(CatalogueTable.Causes, "bumps", "Worn out"));
        Refused("from 0 to below 1", new CatalogueChange.AddCause(Bees with { Prior = new Marked<double>(double.NaN, Own) }, [Link(new SignId("hisses"))]));
    }

    private static Cause Bees { get; } = new(
        new CauseId("bees"), "bees in the reed", null, "Bees live in it.", Own, new Marked<double>(0.01, Own), [new AdjustmentKindId("retire")], Own, []);

    private static CauseLink Link(SignId sign) => new(Bees.Id, sign, Belonging.Typical, new Marked<double>(0.7, Own), Own);

    private static Catalogue Done(params CatalogueChange[] changes) => Assert.IsType<Outcome<Catalogue>.Done>(Catalogue.Shipped.With(changes)).Value;

    private static void Refused(string sentence, params CatalogueChange[] changes) =>
        Assert.Contains(Assert.IsType<Outcome<Catalogue>.Refused>(Catalogue.Shipped.With(changes)).Problems, problem => problem.Message.Contains(sentence, StringComparison.Ordinal));
}
