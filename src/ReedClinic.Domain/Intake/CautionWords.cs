namespace ReedClinic.Domain.Intake;

/// <summary>The plain words that <see cref="Cautions"/> looks for, as people of any age write them.</summary>
internal static class CautionWords
{
    internal static HashSet<string> Denials { get; } = Set("n't no not never without nor neither none");

    /// <summary>Behind one of these “without” denies nothing: “I can't play a page without …”, “how do I play without …”.</summary>
    internal static HashSet<string> TurnsWithout { get; } =
        [.. Denials, .. Set("hardly barely rarely seldom scarcely impossible unable hard difficult how want wants wanted wish like love hope if could would should ever few")];

    /// <summary>What says that a “no” holds but for something, or no longer.</summary>
    internal static HashSet<string> Until { get; } = Set("until till except unless");

    /// <summary>What says within the same clause that a “no” is of another time, or of another reed.</summary>
    internal static HashSet<string> OfAnother { get; } = Set("before other others like");

    /// <summary>What may stand between a “no” and what it denies.</summary>
    internal static HashSet<string> BetweenNoAndIt { get; } = Set(
        "a an any the my our his her all at bad black brown green grey been being be feel feels felt feeling get gets got getting go goes gone really ever have has had having "
        + "make makes made making me lip lips mouth tongue gums finger fingers longer more sign signs trace traces of or mould mouldy smell smells smelly sore numb ill sick visible actually yet very too so is are was turned");

    internal static HashSet<string> SureOfBody { get; } = Set(
        "bleed bleeds bled bleeding blood bloody numb numbness tingle tingles tingling tingly blister blisters blistered rash ulcer ulcers swollen swelling "
        + "allergic allergy itch itches itchy itching headache headaches toothache dizzy dizziness fainted lightheaded light-headed breathless wheezing splinter splinters cramp cramps");

    /// <summary>Hurts by itself, unless it is the ears.</summary>
    internal static HashSet<string> Hurts { get; } = Set("hurt hurts hurting pain pains ache aches aching sore soreness");

    /// <summary>About ears: what hurts is they, or what they hear.</summary>
    internal static HashSet<string> Ears { get; } = Set("ear ears hear hears heard hearing listen listens listened listening");

    /// <summary>About how it sounds.</summary>
    internal static HashSet<string> OnlyHeard { get; } =
        [.. Ears, .. Set("sound sounds sounded tone tones note notes attack attacks start starts crow crows response pitch register tuning intonation tonguing staccato")];

    /// <summary>“I feel faint”, “it makes me faint”: and not a faint note.</summary>
    internal static HashSet<string> Feel { get; } = Set("feel feels felt feeling me almost nearly");

    internal static HashSet<string> Swell { get; } = Set("swell swells");

    /// <summary>Behind these “tongue” is what somebody does to a note.</summary>
    internal static HashSet<string> BeforeTonguing { get; } = Set("i we you to can could n't");

    internal static HashSet<string> Parts { get; } = Set("lip lips mouth tongue gum gums tooth teeth jaw throat chin cheek cheeks face finger fingers thumb hand hands chest nose palate skin");

    internal static HashSet<string> WithAPart { get; } = Set("hurt hurts hurting pain pains painful sore ache aches aching burn burns burning burnt sting stings stinging cut cuts cracked raw scratched scratches scratch dead");

    internal static HashSet<string> Lost { get; } = Set("no lose loses lost losing n't");

    internal static HashSet<string> Unfelt { get; } = Set("n't not no never hardly barely longer stop stopped");

    internal static HashSet<string> SureOfIllness { get; } = Set(
        "ill illness fever feverish flu influenza covid corona infection infections infected infectious contagious cough coughs coughing coughed tonsillitis strep herpes mumps measles unwell vomiting vomited bronchitis pneumonia");

    /// <summary>A fever, and not the weather: “a temperature”, “my temperature”.</summary>
    internal static HashSet<string> BeforeATemperature { get; } = Set("a my his her high had");

    internal static HashSet<string> Weather { get; } = Set("change changes of drop drops difference in");

    internal static HashSet<string> Stomach { get; } = Set("stomach tummy");

    internal static HashSet<string> Caught { get; } = Set("catch catches caught catching");

    internal static HashSet<string> Sore { get; } = Set("sore infected inflamed");

    internal static HashSet<string> HowBad { get; } = Set("bad heavy nasty slight head little big stinking terrible horrible summer mild");

    internal static HashSet<string> Holders { get; } = Set("a my this that his her their another");

    internal static HashSet<string> AfterACold { get; } = Set(
        ", and so but last now at for when while since again this that which who over then or is was has had on in from still right today yesterday before after too until till sore sores two three a all just i we");

    internal static HashSet<string> SureOfDirt { get; } = Set(
        "mould moulds mouldy moulded moulding mildew mildewed fungus fungal musty rotten rotting rotted slime slimy mouse mice rat rats droppings gnawed nibbled insect insects beetle beetles woodworm worm worms "
        + "moth moths cockroach cockroaches maggot maggots ants toilet sewage filthy");

    internal static HashSet<string> Smells { get; } = Set("smell smells smelly smelling smelled smelt stink stinks stinky stinking stank reek reeks reeking");

    internal static HashSet<string> GoodSmells { get; } = Set("good nice fresh fine sweet ok okay normal cane clean lovely");

    internal static HashSet<string> Dirt { get; } = Set("dirt grime mud");

    /// <summary>Dirt, unless it is the sound.</summary>
    internal static HashSet<string> Dirty { get; } = Set("dirty grimy muddy");

    /// <summary>Dirt on the cane, or how a note begins.</summary>
    internal static HashSet<string> Furry { get; } = Set("furry fuzz");

    internal static HashSet<string> PartsOfAReed { get; } = Set("cane tip corner corners heart back blade blades bark thread cork staple tube inside");

    internal static HashSet<string> Spots { get; } = Set("spot spots spotty speck specks speckle speckles stain stains stained dot dots patch patches mark marks fleck flecks");

    internal static HashSet<string> Colours { get; } = Set("brown black green grey gray blue pink fuzzy furry greenish blackish brownish");

    /// <summary>The colours of what may be wrong with cane, not of a thread.</summary>
    internal static HashSet<string> DarkColours { get; } = Set("black grey gray green white blackish greenish");

    internal static HashSet<string> Coloured { get; } = Set("thread winding cork case box bag tag dot mark pencil ink");

    internal static HashSet<string> Within { get; } = Set("inside grow grows growing grown grew");

    internal static HashSet<string> Growing { get; } = Set("grow grows growing grown grew");

    internal static HashSet<string> Something { get; } = Set("something stuff things what");

    internal static HashSet<string> Turned { get; } = Set("turned turning turns gone going goes went become becoming");

    internal static HashSet<string> Animals { get; } = Set("dog dogs puppy cat cats kitten hamster rabbit pet bird");

    internal static HashSet<string> AnimalDoes { get; } = Set("chew chewed licked lick bit bite bitten ate eaten mouth gnaw nibbled played had got stole peed wee");

    /// <summary>What a hand with a blade or an abrasive does.</summary>
    internal static HashSet<string> Works { get; } = Set("scrape sand sandpaper cut clip trim shave file thin carve whittle shorten slice grind polish adjust fix");

    /// <summary>So that “a thin tip” and “a sound file” are no work.</summary>
    internal static HashSet<string> AfterWork { get; } = new(["", .. Set(
        ", it the them this that these those my one some a an any more down off out at away and or before first myself reed reeds tip tips corner corners heart back sides side cane on here there now something anything little bit if to either again")]);

    /// <summary>So that “a thin tip” and “the cut” are no work, either.</summary>
    internal static HashSet<string> BeforeNoWork { get; } = Set("a an the this too very so is its another");

    internal static HashSet<string> Tools { get; } = Set("knife knives razor sandpaper sanding scraping emery scissors scalpel");

    internal static HashSet<string> Off { get; } = Set("off away");

    internal static HashSet<string> Self { get; } = Set("i we");

    internal static HashSet<string> ByOneself { get; } = Set("myself ourselves");

    /// <summary>Whoever else may be the one who works on it.</summary>
    internal static HashSet<string> Others { get; } = Set("you he she they teacher somebody someone anybody anyone");

    /// <summary>What students ask a teacher for, and hardly ever mean to do.</summary>
    internal static HashSet<string> WorksOfATeacher { get; } = Set("fix adjust");

    internal static HashSet<string> Back { get; } = Set("back");

    internal static HashSet<string> May { get; } = Set("can could should may might shall must do would will ll d am want going try plan ought dare like allowed");

    internal static HashSet<string> AllRight { get; } = Set("ok okay alright right safe wise better allowed fine good bad dangerous wrong harm need needed supposed");

    internal static HashSet<string> To { get; } = Set("to");

    internal static HashSet<string> Posting { get; } = Set("send sending post posting mail mailing pack packing");

    private static HashSet<string> Set(string words) => [.. words.Split(' ')];
}
