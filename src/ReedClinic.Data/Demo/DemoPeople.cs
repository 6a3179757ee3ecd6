using ReedClinic.Data.People;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Demo;

/// <summary>Somebody of the invented studio who can sign in.</summary>
/// <param name="Who">What they are here.</param>
/// <param name="Name">Their invented name.</param>
/// <param name="Email">An address under <c>.example</c>, which no mail reaches (RFC 2606).</param>
/// <param name="Password">The demo's one password; it opens nothing but the demo.</param>
public sealed record DemoSignIn(string Who, string Name, string Email, string Password);

/// <summary>The people of Lantern Quay, an invented studio in an invented harbour town.</summary>
internal static class DemoPeople
{
    public const string StudioName = "Lantern Quay Reeds";

    /// <summary>Where its parcels are posted to; a place that doesn't exist.</summary>
    public const string PostTo = "Lantern Quay Reeds\nThe Old Chandlery\n7 Lantern Quay\nMarrow Bay\n(an invented address: please post nothing)";

    /// <summary>Where mail is written to; <c>.example</c> is no address of anybody's (RFC 2606).</summary>
    public const string WriteTo = "studio@lanternquay.example";

    private const string Password = "lantern quay at low tide";

    public static readonly DemoSignIn Maren = new("owner and teacher", "Maren Holloway", "maren@lanternquay.example", Password);

    public static readonly DemoSignIn Edda = new("assistant teacher", "Edda Finch", "edda@lanternquay.example", Password);

    public static readonly DemoSignIn Ines = new("student with two batches and letters", "Ines Calder", "ines@lanternquay.example", Password);

    public static readonly DemoSignIn Tomas = new("student whose reeds are at the bench", "Tomas Arden", "tomas@lanternquay.example", Password);

    public static readonly DemoSignIn Wilma = new("student whose parcel is on its way", "Wilma Skov", "wilma@lanternquay.example", Password);

    public static readonly DemoSignIn Jory = new("student with nothing sent yet", "Jory Penn", "jory@lanternquay.example", Password);

    public static IReadOnlyList<DemoSignIn> All => [Maren, Edda, Ines, Tomas, Wilma, Jory];

    public static NewAccount AccountOf(DemoSignIn person) => new(person.Name, person.Email, person.Password) { Age = AgeAnswer.OldEnough };
}
