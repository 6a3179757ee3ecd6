using ReedClinic.Domain.Intake;

namespace ReedClinic.Domain.Tests.Intake;

/// <summary>What a student writes is searched for what calls for a caution. The sentences are invented; what they call for is common practice.</summary>
public sealed class CautionsTests
{
    [Theory]
    [InlineData("It makes my mouth numb after a page")]
    [InlineData("my lips get sore and bleed")]
    [InlineData("It cut my tongue")]
    [InlineData("I have no feeling in my lower lip afterwards")]
    [InlineData("No idea why my lips bleed")]
    [InlineData("I don’t know why but my gums hurt")]
    [InlineData("It isn't only sore, my lip is swollen")]
    [InlineData("I get dizzy from it")]
    [InlineData("It hurts")]
    [InlineData("it gives me a pain in my jaw")]
    [InlineData("I had a splinter from it")]
    [InlineData("It hurts when I play high notes")]
    [InlineData("It hurts at the start")]
    [InlineData("I can’t feel my lip afterwards")]
    [InlineData("I can no longer feel my fingers")]
    [InlineData("I feel a little faint")]
    [InlineData("It makes me faint")]
    [InlineData("It makes my lip swell")]
    [InlineData("My tongue has a cut")]
    [InlineData("My lip hurts and I hear a hiss")]
    [InlineData("I can't play a page without my lip bleeding.")]
    [InlineData("I can’t get through a page without my lips going numb")]
    [InlineData("I can hardly play a page without my lip bleeding")]
    [InlineData("How do I play a page without my lip bleeding?")]
    [InlineData("I never had a sore lip before this reed.")]
    [InlineData("I never had a sore lip, until I played this one")]
    [InlineData("Before this reed, my lips were never sore")]
    [InlineData("My lips are not sore except after long notes")]
    [InlineData("It doesn’t hurt unless I play high")]
    [InlineData("My lips don't bleed on other reeds")]
    [InlineData("My lips have never been so sore")]
    public void What_hurts_calls_for_a_caution(string words) => Assert.Contains(Caution.Body, Cautions.In(words));

    [Theory]
    [InlineData("It is a pain to play")]
    [InlineData("The high notes hurt my ears")]
    [InlineData("It doesn’t hurt, it is just hard")]
    [InlineData("My lips are not sore")]
    [InlineData("my lips arent sore, only tired")]
    [InlineData("No blood, no tears")]
    [InlineData("It tires my lips after a page")]
    [InlineData("Low notes come late")]
    [InlineData("painfully sharp")]
    [InlineData("The low D is faint")]
    [InlineData("I hear a faint hiss")]
    [InlineData("A swell on a long note breaks off")]
    [InlineData("it cuts out when I tongue")]
    [InlineData("It sounds dead when I tongue")]
    [InlineData("It hurts to hear it")]
    [InlineData("It hurts the sound")]
    [InlineData("I play a page without pain")]
    [InlineData("I have never had sore lips from it")]
    [InlineData("My lips were never sore, and I warmed up before playing")]
    public void What_does_not_hurt_calls_for_none(string words) => Assert.DoesNotContain(Caution.Body, Cautions.In(words));

    [Theory]
    [InlineData("I was ill last week")]
    [InlineData("I had a cold when I played it")]
    [InlineData("I've got a bad cold")]
    [InlineData("had a fever on Monday")]
    [InlineData("sore throat since yesterday")]
    [InlineData("I am sick")]
    [InlineData("My brother has covid")]
    [InlineData("there is a cold sore on my lip")]
    [InlineData("I caught cold")]
    [InlineData("I caught a cold")]
    [InlineData("I had a stomach bug")]
    [InlineData("I had a temperature")]
    [InlineData("My temperature was high")]
    [InlineData("it was the cold I had in March")]
    public void An_illness_calls_for_a_caution(string words) => Assert.Contains(Caution.Illness, Cautions.In(words));

    [Theory]
    [InlineData("I am sick of this reed")]
    [InlineData("It plays flat in a cold room")]
    [InlineData("I left it in the cold")]
    [InlineData("It feels cold")]
    [InlineData("I haven't been ill")]
    [InlineData("It is ill-fitting")]
    [InlineData("Still too hard, and it will not speak")]
    [InlineData("It changes with the temperature")]
    [InlineData("The cold and the dry air close it")]
    [InlineData("A change in temperature closes it")]
    public void No_illness_calls_for_none(string words) => Assert.DoesNotContain(Caution.Illness, Cautions.In(words));

    [Theory]
    [InlineData("It smells odd")]
    [InlineData("There is some mould near the thread")]
    [InlineData("Some mold on the cork, and it's hard")]
    [InlineData("brown spots on the back")]
    [InlineData("It has gone black at the tip")]
    [InlineData("A mouse was in the case")]
    [InlineData("the spots are black")]
    [InlineData("The dog chewed it")]
    [InlineData("It isn’t mouldy, but it stinks")]
    [InlineData("Why does my reed smell?")]
    [InlineData("There is something black inside")]
    [InlineData("something grows in it")]
    [InlineData("Something grey is growing on the thread")]
    [InlineData("The tip is furry")]
    [InlineData("It has fuzz on the cork")]
    [InlineData("There is dirt in it, and the sound is dull")]
    [InlineData("It is muddy")]
    public void Dirt_calls_for_a_caution(string words) => Assert.Contains(Caution.Dirt, Cautions.In(words));

    [Theory]
    [InlineData("No mould, no smell")]
    [InlineData("It doesn't smell at all")]
    [InlineData("It smells of fresh cane")]
    [InlineData("It is neither mouldy nor smelly")]
    [InlineData("The low notes have a dirty sound")]
    [InlineData("There is a thick spot on the left")]
    [InlineData("no black spots")]
    [InlineData("The sound is furry")]
    [InlineData("fuzz on the attack")]
    [InlineData("The response is furry")]
    [InlineData("The low notes are muddy")]
    [InlineData("the sound is dirty")]
    [InlineData("The sound is a bit dirty")]
    [InlineData("There is black thread inside the box")]
    public void What_is_clean_calls_for_none(string words) => Assert.DoesNotContain(Caution.Dirt, Cautions.In(words));

    [Theory]
    [InlineData("Can I scrape it before I send it?")]
    [InlineData("Should I sandpaper the tip first?")]
    [InlineData("May I cut a bit off?")]
    [InlineData("Shouldn’t I clip it?")]
    [InlineData("I want to try to thin the tip")]
    [InlineData("Is it okay to use a knife on it?")]
    [InlineData("Is it all right if I take a little off the corners?")]
    [InlineData("Do you want me to trim it?")]
    [InlineData("I'll sand it a little before I post it")]
    [InlineData("How do I scrape it?")]
    [InlineData("Can I adjust it myself?")]
    [InlineData("May I fix it before I post it?")]
    [InlineData("Scrape it before sending?")]
    [InlineData("Do you think I may scrape it?")]
    public void Whoever_means_to_take_a_knife_to_it_is_cautioned(string words) => Assert.Contains(Caution.Knife, Cautions.In(words));

    [Theory]
    [InlineData("Can you scrape it?")]
    [InlineData("Please clip it if you like")]
    [InlineData("I won't scrape it before I send it")]
    [InlineData("a little scraped off by my teacher")]
    [InlineData("Should I have a thin tip?")]
    [InlineData("Can I send a sound file with it?")]
    [InlineData("When may I play it?")]
    [InlineData("Is this one too old?")]
    [InlineData("Can you fix it so that I can play softly?")]
    [InlineData("I would like you to adjust it")]
    [InlineData("I hope you can fix it")]
    [InlineData("Please clip it so that I can play softly")]
    [InlineData("I would like my teacher to scrape it")]
    [InlineData("I want it thin")]
    [InlineData("Please scrape it before sending it back")]
    [InlineData("How should I adjust my lips?")]
    [InlineData("I never scrape it before I send it")]
    [InlineData("I won't scrape it until you say so")]
    public void Nobody_else_is(string words) => Assert.DoesNotContain(Caution.Knife, Cautions.In(words));

    [Fact]
    public void Several_texts_give_each_caution_once_and_in_order() =>
        Assert.Equal([Caution.Body, Caution.Dirt, Caution.Knife], Cautions.In("Can I cut it?", null, "It smells.\nMy lip bleeds.", "mouldy", ""));

    [Fact]
    public void Nothing_written_calls_for_nothing() => Assert.Empty(Cautions.In(null, "", "  \n "));

    [Fact]
    public void Any_text_at_all_is_read_without_trouble()
    {
        var random = new Random(20261127);
        string[] pieces = ["no", "not", "mould", "'", "’", "n't", "\ud83d", "lip", ",", ".", "\n", "a", "cold", "é", "before", "I", "\0", "--", "sore"];
        for (var round = 0; round < 2_000; round++)
        {
            var found = Cautions.In(string.Join(random.Next(2) == 0 ? " " : "", random.GetItems(pieces, random.Next(30))));
            Assert.Equal(found.Distinct().Order(), found);
        }
    }
}
