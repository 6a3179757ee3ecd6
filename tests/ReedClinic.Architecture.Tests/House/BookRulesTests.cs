using ReedClinic.Architecture.Tests.Reading;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Architecture.Tests.House;

public sealed class BookRulesTests
{
    /// <summary>Methods that can't name an actor or an operation, each with its reason.</summary>
    private static readonly Dictionary<string, string> Exceptions = new()
    {
        ["AccountBook.ReadAsync"] = "Whoever opens a link is nobody yet: its secret is what counts.",
        ["AccountBook.JoinAsync"] = "Whoever joins by a link is nobody yet: its secret is what counts.",
        ["SignUpBook.AskAsync"] = "Who asks for an account is nobody yet.",
        ["BeginBook.AskAsync"] = "Who asks for a link is nobody yet.",
        ["BeginBook.ReadAsync"] = "Whoever opens a link is nobody yet: its secret is what counts.",
        ["BeginBook.StartAsync"] = "Whoever begins by a link is nobody yet: its secret is what counts.",
        ["BeginBook.SendNewAsync"] = "Whoever has an old link is nobody yet: the mail goes to its own address.",
        ["AccountBook.ActorFor"] = "It makes the Actor.",
        ["SignInBook.AskForPasswordAsync"] = "Whoever forgot a password is nobody yet.",
        ["SignInBook.IsGoodAsync"] = "A link is looked at by whoever holds it.",
        ["SignInBook.ChoosePasswordAsync"] = "The link's secret is what lets them, once.",
        ["StudioBook.Read"] = "The studio's name stands on pages that anybody may read.",
        ["LetterLinkBook.ReadAsync"] = "Whoever reads by a private link is nobody: its secret is what counts.",
        ["LetterLinkBook.OpenAsync"] = "The same, for what its letter plays.",
        ["LetterLinkBook.CloseAsync"] = "A link that is closed stays closed, however often it is asked: its own id is operation enough.",
        ["GuardianBook.ReadAsync"] = "Whoever has the link that was sent to a guardian may have no sign-in yet.",
        ["GuardianBook.AgreeNewAsync"] = "The same: the link is who asks.",
        ["PrivacyBook.ReadAsync"] = "What is kept, and why, is for anybody to read.",
        ["BenchVideoBook.KeepAsync"] = "Keeping the same address twice is the same as once.",
        ["StudioBook.Open"] = "The first owner comes in by a one-time code: there is no Actor before.",
    };

    [Fact]
    public void Every_operation_says_who_asks_and_which_one_it_is() =>
        Found.None(BookRules.Violations(System.Reflection.Assembly.Load("ReedClinic.Data").GetTypes(), Exceptions));

    [Fact]
    public void A_careless_book_is_seen()
    {
        string[] expected =
        [
            "CarelessBook.Write writes without an OperationId",
            "CarelessBook.Read does not take the Actor first",
            "CarelessBook.Read does not end with a CancellationToken",
        ];

        Assert.Equal(expected.Order(), BookRules.Violations([typeof(CarelessBook)], Exceptions).Order());
    }

    public sealed class CarelessBook
    {
        public static Task<Outcome<int>> Write(Actor actor, CancellationToken ct) => Task.FromResult<Outcome<int>>(new Outcome<int>.NotFound());

        public static Task<int> Read(int number) => Task.FromResult(number);

        public static Task<Outcome<int>> Careful(Actor actor, OperationId operation, CancellationToken ct) => Write(actor, ct);
    }
}
