"""The panels: sliders, one computation, one picture. Only this folder loads ipywidgets; one module a notebook."""

from liftcalc.panels.capacity import CapacityPanel, CountPanel, IntervalPanel, RoutesPanel
from liftcalc.panels.cost import CostDriversPanel, CostPanel
from liftcalc.panels.cost_parts import CostParts
from liftcalc.panels.counted_minutes import CountedMinutes
from liftcalc.panels.day_page import DayPage
from liftcalc.panels.decision import Decision
from liftcalc.panels.disturbance import DisturbedLine
from liftcalc.panels.doubt import AgreementPanel, BudgetPanel, SpreadPanel
from liftcalc.panels.exercise_boxes import AnswerBox, LearnerBox, RecordBox
from liftcalc.panels.four_figures import FourFigures
from liftcalc.panels.kinds import KindPanel
from liftcalc.panels.limits import LimitsPanel, SharePanel
from liftcalc.panels.loading_day import LoadingDayPanel
from liftcalc.panels.measuring import LengthPanel, TrackPanel
from liftcalc.panels.own_sheets import HillPage, SheetPage
from liftcalc.panels.power import MotorPanel, PowerPanel
from liftcalc.panels.prediction import NumberPrediction, Prediction
from liftcalc.panels.riders import FlowPanel, RidersPanel
from liftcalc.panels.sheave_and_hand import HandsPanel, SheavePanel, StartingPanel
from liftcalc.panels.shown import Shown
from liftcalc.panels.slope import SlopePanel
from liftcalc.panels.spacing import LineViewPanel, MixPanel, StoppingPanel, UnloadPanel
from liftcalc.panels.start_here import StartPanel
from liftcalc.panels.state import notebook_state
from liftcalc.panels.units import PowerRulerPanel, RoundingPanel, SpeedRulerPanel
from liftcalc.panels.waiting import LapsPanel, LiftLinePanel
from liftcalc.panels.your_lift import AgreementOfFiles, LimitsAndCount, YourLiftPage

__all__ = [
    "AgreementOfFiles",
    "AgreementPanel",
    "AnswerBox",
    "BudgetPanel",
    "CapacityPanel",
    "CostDriversPanel",
    "CostPanel",
    "CostParts",
    "CountPanel",
    "CountedMinutes",
    "DayPage",
    "DisturbedLine",
    "Decision",
    "FlowPanel",
    "FourFigures",
    "HandsPanel",
    "HillPage",
    "IntervalPanel",
    "KindPanel",
    "LapsPanel",
    "LearnerBox",
    "LengthPanel",
    "LiftLinePanel",
    "LimitsAndCount",
    "LimitsPanel",
    "LineViewPanel",
    "LoadingDayPanel",
    "MixPanel",
    "MotorPanel",
    "NumberPrediction",
    "PowerPanel",
    "PowerRulerPanel",
    "Prediction",
    "RecordBox",
    "RidersPanel",
    "RoundingPanel",
    "RoutesPanel",
    "SharePanel",
    "SheetPage",
    "SheavePanel",
    "Shown",
    "SlopePanel",
    "SpeedRulerPanel",
    "SpreadPanel",
    "StartPanel",
    "StartingPanel",
    "StoppingPanel",
    "TrackPanel",
    "UnloadPanel",
    "YourLiftPage",
    "notebook_state",
]
